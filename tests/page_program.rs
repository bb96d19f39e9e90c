//! The program serving its page for a test.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

/// A program that serves its page until it is dropped.
pub struct Program {
    /// The process.
    pub child: Child,
    /// Where it is reached: "127.0.0.1:40123".
    pub address: String,
}

impl Program {
    /// Starts a program on a free port.
    pub fn start(program: &str, arguments: &[&str]) -> Program {
        let mut child = Command::new(program)
            .args(["serve", "--port", "0", "--quiet"])
            .args(arguments)
            .stdout(Stdio::piped())
            .spawn()
            .expect("the program starts");
        let mut line = String::new();
        let out = child.stdout.take().expect("its stdout");
        BufReader::new(out).read_line(&mut line).expect("its address");
        let address = line.trim().strip_prefix("http://").and_then(|rest| rest.strip_suffix('/')).map(String::from);
        Program { child, address: address.unwrap_or_else(|| panic!("no address but {line:?}")) }
    }
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
