//! Taking connections: so many at a time, each with a time limit for what it sends, until the program is stopped.
//!
//! Method: HTTP/1.1 by hyper. A connection that sends its head too slowly, or nothing, is closed; a body is read under the limit
//! of the whole request. Beyond the most connections new ones wait in the queue of the system.
//! Limits: no TLS; beyond this computer the page belongs behind something that has it.

use super::router;
use super::site::Site;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::io;
use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;
use thiserror::Error;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;

/// Connections at a time.
const MOST_CONNECTIONS: usize = 512;
/// How long the head of a request may take, and how long a connection may idle.
const SLOWEST_HEAD: Duration = Duration::from_secs(10);

/// Why the page cannot be served.
#[derive(Debug, Error)]
pub enum ServeError {
    /// The address is taken.
    #[error("{address} is in use by another program; name another port with --port, or --port 0 for any that is free")]
    Taken {
        /// The address.
        address: SocketAddr,
    },
    /// The system refuses.
    #[error("{address} cannot be listened on: {cause}")]
    System {
        /// The address.
        address: SocketAddr,
        /// Why.
        cause: io::Error,
    },
}

/// A page that listens and does not answer yet.
#[derive(Debug)]
pub struct Listening {
    listener: TcpListener,
    site: Arc<Site>,
    /// Where it is reached.
    pub address: SocketAddr,
}

/// Listens on an address; port 0 takes any that is free.
pub async fn listen(address: IpAddr, port: u16, site: Site) -> Result<Listening, ServeError> {
    let address = SocketAddr::new(address, port);
    let bound = TcpListener::bind(address).await.and_then(|listener| Ok((listener.local_addr()?, listener)));
    match bound {
        Ok((address, listener)) => Ok(Listening { listener, site: Arc::new(site), address }),
        Err(cause) if cause.kind() == io::ErrorKind::AddrInUse => Err(ServeError::Taken { address }),
        Err(cause) => Err(ServeError::System { address, cause }),
    }
}

impl Listening {
    /// Answers until the program ends.
    pub async fn answer(self) -> std::convert::Infallible {
        let service = router(self.site);
        let room = Arc::new(Semaphore::new(MOST_CONNECTIONS));
        loop {
            let Ok(place) = room.clone().acquire_owned().await else { continue };
            let Ok((stream, _)) = self.listener.accept().await else {
                // too many open files and the like pass
                tokio::time::sleep(Duration::from_millis(50)).await;
                continue;
            };
            let service = TowerToHyperService::new(service.clone());
            tokio::spawn(async move {
                let mut server = http1::Builder::new();
                server.timer(TokioTimer::new()).header_read_timeout(SLOWEST_HEAD).max_buf_size(64 * 1024);
                // a visitor who goes away is no fault
                let _ = server.serve_connection(TokioIo::new(stream), service).await;
                drop(place);
            });
        }
    }
}
