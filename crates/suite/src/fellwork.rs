//! The finished program, run as a maker runs it.

use std::env;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

/// The built `fellwork`, of the same profile as the test that asks.
///
/// It is built first, so that a test never judges yesterday's program; after `cargo test --workspace`
/// nothing is left to build and this takes a moment.
///
/// # Panics
/// It cannot be built or is not where cargo puts it.
pub fn program() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        let test = env::current_exe().expect("a test is a file");
        // target/debug/deps/suite-0123abcd
        let profile = test.ancestors().nth(2).expect("a test lies in deps");
        if let Some(cargo) = env::var_os("CARGO") {
            build(&cargo, profile.ends_with("release"));
        }
        let program = profile.join(format!("fellwork{}", env::consts::EXE_SUFFIX));
        assert!(program.is_file(), "{} is not built", program.display());
        program
    })
}

fn build(cargo: &OsStr, release: bool) {
    let mut command = Command::new(cargo);
    command
        .args(["build", "--quiet", "--bin", "fellwork"])
        .current_dir(crate::source::root());
    if release {
        command.arg("--release");
    }
    // What cargo says about the test's own package is no setting for the program's build.
    for (name, _) in env::vars_os() {
        let name = name.to_string_lossy().into_owned();
        if name.starts_with("CARGO_PKG_") || name.starts_with("CARGO_MANIFEST_") {
            command.env_remove(name);
        }
    }
    let status = command.status().expect("cargo can be started");
    assert!(status.success(), "fellwork does not build");
}

/// Runs the program and gives what it printed.
///
/// # Panics
/// It cannot be started.
pub fn run<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> Output {
    Command::new(program())
        .args(arguments)
        .output()
        .expect("fellwork can be started")
}

/// Runs the program, which has to succeed, and gives its standard output.
///
/// # Panics
/// It ends with another code than 0, or prints what is not UTF-8.
pub fn succeed<S: AsRef<OsStr>>(arguments: impl IntoIterator<Item = S>) -> String {
    let output = run(arguments);
    assert!(
        output.status.success(),
        "fellwork ended with {}: {}",
        output.status,
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("fellwork prints UTF-8")
}
