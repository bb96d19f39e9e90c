//! The program: everything else is in the library.

use std::process::ExitCode;

fn main() -> ExitCode {
    axiswright::cli::main()
}
