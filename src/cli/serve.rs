//! `serve`: the local page.
//!
//! Method: catalogue and rules are read once, faults are told as by every command; then the page answers until it is stopped.
//! Limits: what is changed in a folder of the catalogue or of rules counts after the next start.

use super::{Answer, Console, Failure};
use crate::web::{self, Site};
use crate::yaml::Faults;
use crate::{catalog, rule};
use clap::Args;
use std::net::{IpAddr, Ipv4Addr};
use std::path::PathBuf;

/// The port, if nothing is said.
const PORT: u16 = 7227;

/// Open a local page on which a machine is specified in plain fields
#[derive(Args)]
pub struct Serve {
    /// Port to listen on; 0 takes any that is free
    #[arg(long, value_name = "N", default_value_t = PORT)]
    port: u16,
    /// Address to listen on; anything but this computer's own lets others in, without a password
    #[arg(long, value_name = "ADDRESS", default_value_t = IpAddr::V4(Ipv4Addr::LOCALHOST))]
    address: IpAddr,
    /// Name by which others call this computer, needed beside --address; may be given again
    #[arg(long, value_name = "NAME")]
    host: Vec<String>,
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder with rule files, and cautions below cautions/, that add to or replace the built-in ones; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
}

impl Serve {
    /// Runs the command; it ends when the program is stopped.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let site = self.site()?;
        let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build();
        let runtime = runtime.map_err(|error| Failure::Ours(format!("the page cannot be started: {error}")))?;
        // a page goes on for others when one answer breaks; what broke is told
        std::panic::set_hook(Box::new(|fault| {
            super::console::last_words(&format!("this is a fault of axiswright, not of your input: {fault}"));
        }));
        runtime.block_on(async {
            let listening = web::listen(self.address, self.port, site).await;
            let listening = listening.map_err(|error| Failure::Input(error.to_string()))?;
            let address = listening.address;
            if !address.ip().is_loopback() {
                console.message("others on this network can open the page, without a password");
            }
            console.result(&format!("http://{address}/\n"))?;
            console.message("the page is open at this address; Ctrl-C ends it");
            match listening.answer().await {}
        })
    }

    fn site(&self) -> Result<Site, Failure> {
        let mut faults = Faults::default();
        let catalog = catalog::load(&self.catalog).map_err(|found| faults.merge(found));
        let rulebook = rule::load(&self.rules).map_err(|found| faults.merge(found));
        let (Ok(catalog), Ok(rulebook)) = (catalog, rulebook) else { return Err(faults.into()) };
        let mut hosts = self.host.clone();
        hosts.push(self.address.to_string());
        Ok(Site::new(catalog, rulebook, self.catalog.clone(), hosts))
    }
}
