use axiswright::{brief, catalog, drive::*, rule, search::*, units::*};
fn main() {
    let text = std::fs::read_to_string(std::env::args().nth(1).unwrap()).unwrap();
    let brief = match brief::load("b.yaml", &text) {
        Ok(b) => b,
        Err(e) => {
            eprintln!("{e}");
            return;
        }
    };
    let catalog = match catalog::load(&[]) {
        Ok(b) => b,
        Err(e) => {
            eprintln!("{e}");
            return;
        }
    };
    let rulebook = match rule::load(&[]) {
        Ok(b) => b,
        Err(e) => {
            eprintln!("{e}");
            return;
        }
    };
    for (i, axis) in brief.axes.iter().enumerate() {
        let demand = Demand::new(&brief, i, Mass::of_si(if axis.carries.is_empty() { 0.0 } else { 600.0 }));
        println!("== {} phases {}", axis.name, demand.phases.len());
        let setting = Setting {
            catalog: &catalog,
            rulebook: &rulebook,
            merit: Merit::new(&brief.prefer),
            coupling: Coupling { mass: true, ..Default::default() },
            waived: &[],
            exhaustive: false,
        };
        for fam in FAMILIES {
            struct W<'a, 'b> {
                d: &'a Demand<'a>,
                s: &'b Setting<'a>,
            }
            impl WithFamily for W<'_, '_> {
                type Output = (Walk, Option<(Path, f64)>);
                fn with<F: Family>(self, f: &F) -> Self::Output {
                    for n in never_entered(f, self.d, self.s) {
                        println!("{n:?}");
                    }
                    let t = std::time::Instant::now();
                    let w = walk(f, self.d, self.s);
                    println!("  walk {:?}", t.elapsed());
                    let t = std::time::Instant::now();
                    let n = if w.best.is_empty() { nearest(f, self.d, self.s) } else { None };
                    println!("  nearest {:?}", t.elapsed());
                    (w, n)
                }
            }
            let (w, n) = with_family(fam, &demand, &catalog, W { d: &demand, s: &setting }).unwrap();
            println!(
                " {fam}: {} configurations, {} admissible, front {}",
                w.census.configurations,
                w.census.admissible,
                w.front.len()
            );
            let mut e: Vec<_> = w
                .census
                .excluded
                .iter()
                .enumerate()
                .filter(|(_, n)| **n > 0)
                .map(|(i, n)| (n, &rulebook.rules[i].id))
                .collect();
            e.sort();
            e.reverse();
            for (n, id) in e.iter().take(12) {
                println!("      {id}: {n}");
            }
            let show = |p: &Path| {
                let w = work_out(fam, p, &demand, &setting).unwrap();
                println!(
                    "    {:?}",
                    w.sizes
                        .iter()
                        .map(|s| match s {
                            Size::Number(n, v, u) => format!("{n} {v} {u}"),
                            Size::Word(n, v) => format!("{n} {v}"),
                        })
                        .collect::<Vec<_>>()
                        .join(", ")
                );
                let mut j = w.judged;
                j.sort_by(|a, b| b.utilisation.total_cmp(&a.utilisation));
                for x in j.iter().take(6) {
                    println!("        {} {:.3} ({:?})", x.rule.id, x.utilisation, x.rule.obligation);
                }
                println!(
                    "     merit {:.0} purchase {:.0} err {:.1}µm mass {:.0}",
                    w.attributes.merit,
                    w.attributes.purchase,
                    w.attributes.error * 1e6,
                    w.attributes.mass
                );
            };
            for b in w.best.iter().take(2) {
                show(&b.path);
            }
            if let Some((p, x)) = n {
                println!("   nearest shortfall {x}");
                show(&p);
            }
        }
    }
}
