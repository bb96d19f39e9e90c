use axiswright::*;
fn main() {
    let p = std::env::args().nth(1).unwrap();
    let t = std::time::Instant::now();
    let inputs = match pipeline::load(std::path::Path::new(&p), &[], &[]) {
        Ok(i) => i,
        Err(f) => {
            eprintln!("{f}");
            std::process::exit(2)
        }
    };
    eprintln!("load {:?}", t.elapsed());
    let r = pipeline::recommend(&inputs, std::env::args().nth(2).is_some());
    eprintln!("recommend {:?}", t.elapsed());
    let m = report::markdown(&r, units::UnitSystem::Metric);
    eprintln!("report {:?}", t.elapsed());
    std::fs::write("/tmp/t/r.json", serde_json::to_string_pretty(&r).unwrap()).unwrap();
    println!("{m}");
}
