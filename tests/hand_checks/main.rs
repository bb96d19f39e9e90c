//! Every formula worked once by hand, through the register of `calc`.
//!
//! Expected values come from the equations by hand or pocket calculator; they show that a formula does what its
//! equation says. Works of others stand in the reference tests, second methods in the method tests. Rows of the
//! formulas that `calc` offers with arguments of their own stand in the tests of `calc`.

mod axis_test;
mod duty;
mod edges;
mod factors;
mod motors;
mod racks;
mod screws;
mod sides;

use axiswright::calc::{calculate, entries};

/// Call, unit, value to its last digit.
type Row = (&'static str, &'static str, &'static str);

/// Rows that have no file of their own.
const HAND: &[Row] = &[
    // fall of a suspended load: 0.008·(2π/0.01)² = 3158.27 kg; 2941.995/3458.27; (12·628.319 − 2941.995)/3458.27
    ("reduced-mass rotating-inertia=80kg·cm² travel-per-turn=10mm reduction=1", "kg", "3158.3"),
    ("fall-acceleration gravity-force=2941.995N driven-mass=300kg reduced-mass=3158.27kg", "m/s²", "0.85071"),
    (
        "brake-deceleration brake-torque=12N·m brake-share=1 travel-per-turn=10mm reduction=1 gravity-force=2941.995N driven-mass=300kg reduced-mass=3158.27kg",
        "m/s²",
        "1.3295",
    ),
    // 15 + 1.0634 + 0.342536²/2.659 = 15 + 1.063 + 44.126 mm
    (
        "stopping-distance speed=0.3m/s brake-delay=50ms fall-acceleration=0.85071m/s² brake-deceleration=1.3295m/s²",
        "mm",
        "60.19",
    ),
    // 3458.27·0.117331/2 + 2941.995·0.044126 = 202.88 + 129.82
    (
        "brake-work speed=0.3m/s brake-delay=50ms fall-acceleration=0.85071m/s² brake-deceleration=1.3295m/s² driven-mass=300kg reduced-mass=3158.27kg gravity-force=2941.995N",
        "J",
        "332.7",
    ),
    // stop, seat and supply
    ("set-torque motor-peak-torque=35N·m torque-margin=1.5 peak-torque=8.2N·m holding-torque=0", "N·m", "12.30"),
    // a weight that the counterbalance leaves: 1.5·10
    ("set-torque motor-peak-torque=35N·m torque-margin=1.5 peak-torque=8.2N·m holding-torque=10N·m", "N·m", "15.00"),
    ("set-torque motor-peak-torque=10N·m torque-margin=1.5 peak-torque=8.2N·m holding-torque=9N·m", "N·m", "10.0"),
    // 10·20·4.5/6.5
    (
        "stop-torque-with-weight set-torque=20N·m rotating-inertia=20kg·cm² mass-inertia=45kg·cm² reduction=10 holding-torque=0",
        "N·m",
        "138.46",
    ),
    // 2·(30·2 + 3·1)/3
    (
        "reduction-stop-torque set-torque=30N·m load-inertia=20kg·cm² rotor-inertia=10kg·cm² reduction=2 holding-torque=3N·m",
        "N·m",
        "42.0",
    ),
    ("stop-force stop-torque=138.5N·m pinion-diameter=42.44mm", "N", "6526.9"),
    // 63.662 − 7.5 − 15
    ("seat-diameter pinion-diameter=63.662mm module=3mm profile-shift=0 output-shaft-diameter=45mm", "mm", "41.162"),
    ("seat-diameter pinion-diameter=63.662mm module=3mm profile-shift=0 output-shaft-diameter=32mm", "mm", "32.0"),
    // M = 3000·1.06418·0.012 = 38.310, T = 3000·0.02 = 60 N·m, √(M² + 0.75·T²) = 64.554; 32·64.554/(π·0.02³)
    (
        "seat-stress peak-force=3kN helix-angle=0 face-width=24mm seat-diameter=20mm pinion-diameter=40mm",
        "MPa",
        "82.20",
    ),
    // 3·206e9·(π·0.02⁴/64)/(0.012³·1.13247)
    ("seat-stiffness face-width=24mm seat-diameter=20mm helix-angle=0", "N/µm", "2480.3"),
    ("series-2 first=600N/µm second=300N/µm", "N/µm", "200.0"),
    ("gearbox-drag no-load-torque=1.2N·m reduction=8", "N·m", "9.60"),
    // (0.8 + 0.2)·2π·(10/60)/0.01 + 2000·(10/60)·(1/0.95 − 1)
    (
        "nut-heat preload-drag-torque=0.8N·m bearing-drag-torque=0.4N·m mean-speed=10m/min travel-per-turn=10mm phase-force=2kN phase-share=1 phase-speed=10m/min screw-efficiency=0.95",
        "kW",
        "0.12226",
    ),
    ("supply-power peak-power=9.8kW supply-efficiency=0.85", "kW", "11.529"),
    // motion
    ("trapezoid-time travel=0.8m speed=0.5m/s acceleration=5m/s²", "s", "1.700"),
    ("trapezoid-time travel=0.04m speed=0.5m/s acceleration=5m/s²", "s", "0.17889"),
    ("mean-speed phase-share=50%,50% phase-speed=0.2m/s,-0.4m/s", "m/min", "18.000"),
    ("service-distance mean-speed=0.25m/s service-hours=1000h", "mm", "900000000"),
    ("shaft-speed speed=0.5m/s travel-per-turn=10mm", "1/min", "3000.0"),
    ("geared-speed shaft-speed=300/min reduction=10", "1/min", "3000.0"),
    // masses and forces
    ("moving-mass moved-mass=500kg carried-mass=200kg riding-mass=12kg cable-chain-mass=5kg", "kg", "717.0"),
    ("load-share moved-mass=1000kg carried-mass=500kg drives=2 carriage-reach=0.4", "1", "0.63333"),
    ("load-share moved-mass=1000kg carried-mass=500kg drives=1 carriage-reach=0.4", "1", "1.0"),
    ("load-share moved-mass=0 carried-mass=0 drives=2 carriage-reach=0.4", "1", "0.5"),
    ("load-share moved-mass=900kg carried-mass=900kg drives=3 carriage-reach=0", "1", "0.33333"),
    ("driven-mass moving-mass=1500kg load-share=0.6", "kg", "900.0"),
    ("friction-force mass=600kg angle=0 friction=0.005 wiper-force=60N", "N", "89.42"),
    ("friction-force mass=600kg angle=90deg friction=0.005 wiper-force=60N", "N", "60.00"),
    ("gravity-force mass=300kg angle=90deg", "N", "2941.995"),
    ("gravity-force mass=300kg angle=30deg", "N", "1470.998"),
    ("peak-force forces=3kN,-4kN,1kN gravity-force=2kN", "N", "4000.0"),
    ("peak-force forces=3kN,-4kN,1kN gravity-force=5kN", "N", "5000.0"),
    ("mean-force forces=2kN,1kN shares=50%,50% speeds=0.2m/s,-0.2m/s", "N", "1650.96"),
    ("mean-force forces=2kN,1kN shares=50%,50% speeds=0,0", "N", "0.0"),
    ("per-drive-force force=900N drives=2", "N", "450.0"),
    // screw
    ("screw-length free-length=1200mm journal-length=150mm", "mm", "1350.0"),
    ("circulation-speed nominal-diameter=40mm screw-speed=3000/min", "mm/min", "120000.0"),
    ("lead-angle lead=10mm ball-circle-diameter=33mm", "deg", "5.50957"),
    ("preload preload-share=0.05 dynamic-rating=40kN", "N", "2000.0"),
    ("loaded-half force=4kN preload=3kN", "N", "5354.5"),
    ("loaded-half force=-9kN preload=3kN", "N", "9000.0"),
    ("loaded-half force=4kN preload=0", "N", "4000.0"),
    ("life-hours life=1000Mrev mean-speed=8m/min travel-per-turn=10mm", "s", "75000000"),
    ("static-safety static-rating=86kN peak-half-load=4.3kN", "1", "20.0"),
    ("hollow-whip-speed root-diameter=40mm bore=16mm free-length=2m eigenvalue-squared=9.8696", "1/min", "1300.0"),
    // 15 m/min and 12 m/min on 20 mm: 750 and 600 1/min, over 500: 1.5 and 1.2; what stands does not count
    ("whip-distance speed=15m/min lead=20mm whip-speed=500/min phase-top-speed=12m/min,0", "1", "0.2000"),
    ("whip-distance speed=8m/min lead=20mm whip-speed=500/min phase-top-speed=0", "1", "0.2000"),
    ("tension-whip-factor axial-tension=5kN buckling-load=10kN eigenvalue-squared=9.8696", "1", "1.22474"),
    ("tension-whip-factor axial-tension=-10kN buckling-load=10kN eigenvalue-squared=9.8696", "1", "0.0"),
    ("travel-variation grade-number=5 positioning=1 variation-300=23µm travel=1m", "mm", "0.035"),
    ("travel-variation grade-number=4 positioning=1 variation-300=16µm travel=1m", "mm", "0.026"),
    ("travel-variation grade-number=7 positioning=0 variation-300=52µm travel=1.2m", "mm", "0.104"),
    ("travel-variation grade-number=7 positioning=0 variation-300=52µm travel=0.2m", "mm", "0.052"),
    // stiffness
    ("core-diameter ball-circle-diameter=41mm ball-diameter=6.35mm", "mm", "36.510"),
    ("linear-of-torsional torsional-stiffness=15kN·m/rad travel-per-turn=10mm", "N/µm", "5921.8"),
    ("nut-stiffness rated-nut-stiffness=800N/µm preload-share=0.08", "N/µm", "935.7"),
    ("nut-stiffness rated-nut-stiffness=800N/µm preload-share=0", "N/µm", "467.8"),
    ("stiffness-of-four first=192.57N/µm second=700N/µm third=600N/µm fourth=900N/µm", "N/µm", "106.39"),
    ("stiffness-of-five first=100N/µm second=100N/µm third=100N/µm fourth=100N/µm fifth=100N/µm", "N/µm", "20.0"),
    ("deflection force=900N stiffness=100N/µm", "mm", "0.009"),
    ("cutting-shift deflection=9µm play=40µm both-ways=1 cutting-force=900N gravity-force=0N balance=0", "mm", "0.029"),
    (
        "cutting-shift deflection=9µm play=40µm both-ways=1 cutting-force=900N gravity-force=1500N balance=0.3",
        "mm",
        "0.009",
    ),
    (
        "cutting-shift deflection=9µm play=40µm both-ways=1 cutting-force=900N gravity-force=1500N balance=0.5",
        "mm",
        "0.029",
    ),
    // heat
    ("heat-flow drag-torque=0.8Nm mean-speed=15m/min travel-per-turn=10mm", "kW", "0.12566"),
    // inertia
    ("disc-inertia diameter=42mm width=25mm", "kg·m²", "0.00005995"),
    (
        "rotating-inertia rotor-inertia=60kg·cm² reduction-inertia=3kg·cm² shaft-inertia=25.648kg·cm² reduction=1",
        "kg·m²",
        "0.0088648",
    ),
    (
        "load-inertia mass-inertia=15.198kg·cm² reduction-inertia=3kg·cm² shaft-inertia=25.648kg·cm² reduction=2",
        "kg·m²",
        "0.0024610",
    ),
    ("inertia-ratio load-inertia=43.846kg·cm² rotor-inertia=60kg·cm²", "1", "0.731"),
    // motor: driving, driven, at rest, rotor alone
    (
        "phase-torque force=3kN speed=0.5m/s acceleration=0 travel-per-turn=10mm reduction=1 efficiency=0.95 back-efficiency=0.947 drag-torque=0.5Nm rotating-inertia=0.01kg·m²",
        "N·m",
        "5.526",
    ),
    (
        "phase-torque force=-3kN speed=0.5m/s acceleration=0 travel-per-turn=10mm reduction=1 efficiency=0.95 back-efficiency=0.947 drag-torque=0.5Nm rotating-inertia=0.01kg·m²",
        "N·m",
        "-4.022",
    ),
    (
        "phase-torque force=3kN speed=-0.5m/s acceleration=0 travel-per-turn=10mm reduction=2 efficiency=0.95 back-efficiency=0.947 drag-torque=0.5Nm rotating-inertia=0.01kg·m²",
        "N·m",
        "2.011",
    ),
    (
        "phase-torque force=3kN speed=0 acceleration=0 travel-per-turn=10mm reduction=1 efficiency=0.95 back-efficiency=0.947 drag-torque=0.5Nm rotating-inertia=0.01kg·m²",
        "N·m",
        "4.775",
    ),
    (
        "phase-torque force=0 speed=0.5m/s acceleration=5m/s² travel-per-turn=10mm reduction=1 efficiency=0.95 back-efficiency=0.947 drag-torque=0Nm rotating-inertia=0.01kg·m²",
        "N·m",
        "31.416",
    ),
    ("peak-torque torques=3Nm,-4Nm,1Nm", "N·m", "4.0"),
    ("available-peak-torque speed=3500/min peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min", "N·m", "30.0"),
    ("available-peak-torque speed=-2500/min peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min", "N·m", "60.0"),
    ("available-peak-torque speed=4500/min peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min", "N·m", "0.0"),
    (
        "peak-torque-use torques=15Nm,-15Nm top-speeds=25m/min,-35m/min travel-per-turn=10mm reduction=1 peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min",
        "1",
        "0.5",
    ),
    (
        "peak-torque-use torques=1Nm top-speeds=50m/min travel-per-turn=10mm reduction=1 peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min",
        "1",
        "1000000",
    ),
    (
        "peak-torque-use torques=0Nm top-speeds=50m/min travel-per-turn=10mm reduction=1 peak-torque=60Nm knee-speed=2500/min speed-limit=4500/min",
        "1",
        "0.0",
    ),
    ("rms-speed speeds=0.3m/s,-0.4m/s shares=50%,50% travel-per-turn=10mm reduction=1", "1/min", "2121.3"),
    ("continuous-torque speed=2000/min standstill-torque=20Nm rated-torque=16Nm rated-speed=3000/min", "N·m", "18.33"),
    ("continuous-torque speed=4000/min standstill-torque=20Nm rated-torque=16Nm rated-speed=3000/min", "N·m", "12.00"),
    ("peak-power torques=10Nm,-4Nm top-speeds=0.5m/s,0.5m/s travel-per-turn=10mm reduction=1 drives=2", "kW", "6.283"),
    (
        "mean-power torques=10Nm,-10Nm speeds=0.5m/s,0.5m/s shares=50%,50% travel-per-turn=10mm reduction=1 drives=1 efficiency=0.85",
        "kW",
        "1.848",
    ),
    ("holding-torque gravity-force=2941.995N travel-per-turn=10mm reduction=1", "N·m", "4.6823"),
    // accuracy
    ("root-sum-square-2 first=3µm second=4µm", "mm", "0.005000"),
    ("root-sum-square-3 first=2µm second=3µm third=6µm", "mm", "0.007000"),
    ("root-sum-square-4 first=1µm second=1µm third=1µm fourth=1µm", "mm", "0.002000"),
    ("lost-motion friction=200N stiffness=100N/µm", "mm", "0.004000"),
    ("reversal-error play=40µm lost-motion=8µm compensated=75%", "mm", "0.018000"),
    ("repeatability reversal=3µm scatter=0.6µm", "mm", "0.005400"),
    ("bidirectional-accuracy position-error=8µm reversal=3µm scatter=0.6µm", "mm", "0.013400"),
    ("systematic-deviation position-error=8µm reversal=3µm", "mm", "0.011000"),
    ("tool-error position-error=8µm reversal=3µm scatter=0.6µm", "mm", "0.006700"),
    ("scatter encoder-step=0.0763µm friction-force=200N stiffness=100N/µm share=0.1", "mm", "0.0002012"),
    ("scale-error error-per-length=5µm/m least=3µm travel=2m", "mm", "0.010000"),
    ("scale-error error-per-length=5µm/m least=3µm travel=0.2m", "mm", "0.003000"),
    // money: the middle rows put in the price of length above 60 % of the longest, and of size
    (
        "screw-price nominal-diameter=32mm length=1m length-limit=5m grade-factor=1 size-factor=1 nut-factor=1 base=220 per-metre=260",
        "",
        "480.0",
    ),
    (
        "screw-price nominal-diameter=32mm length=4m length-limit=5m grade-factor=1 size-factor=1 nut-factor=1 base=220 per-metre=260",
        "",
        "1676.0",
    ),
    (
        "screw-price nominal-diameter=128mm length=1m length-limit=5m grade-factor=2 size-factor=1 nut-factor=1.45 base=220 per-metre=260",
        "",
        "9264.0",
    ),
    ("sum-of-five first=1 second=2 third=3 fourth=4 fifth=5", "", "15.0"),
    ("price-of-many count=3 each=120", "", "360.0"),
    ("length-price length=2.5m per-metre=100", "", "250.0"),
    ("fitting-price fixed-hours=10h hours-per-metre=2h travel=4m rate-per-hour=60", "", "1080.0"),
    // 1/1.08² + 1/1.08⁴ + 1/1.08⁶ + 1/1.08⁸; the fifth would fall on the end of the service
    ("discounted-exchanges life=8000h hours-per-year=4000h service-years=10years rate=8%", "1", "2.7628"),
    ("discounted-exchanges life=8000h hours-per-year=4000h service-years=10years rate=0", "1", "4.0"),
    ("discounted-exchanges life=50000h hours-per-year=4000h service-years=10years rate=8%", "1", "0.0"),
    // 2·(500 + 4·60 + 8·100)
    ("exchange-price count=2 part-price=500 work=4h labour-rate=60 standstill=8h downtime-price=100", "", "3080.0"),
    ("replacement-cost exchanges=2.7628 exchange-price=3080", "", "8509.42"),
    ("price-sum-3 first=100 second=20 third=3", "", "123.0"),
    ("energy-cost mean-power=2kW hours-per-year=3500h price-per-kwh=0.25", "", "1750.0"),
    ("annuity rate=8% years=10years", "1", "6.7101"),
    ("whole-life-cost purchase=1000 energy=50 upkeep=50 annuity=6.7101 replacement=300", "", "1971.01"),
    (
        "support-price bearing-price=200 thrust-ends=1 support-ends=1 support-price-share=0.4 ends-price=220 nominal-diameter=32mm",
        "",
        "500.0",
    ),
    ("rack-line-price rack-metre-price=424 rack-length=12m rack-price-factor=1", "", "5088.0"),
    ("pinion-price pinion-base-price=40 pinion-size-price=22.4 module=3mm teeth=20", "", "156.4"),
    ("price-sum first=5088 second=156", "", "5244.0"),
    // (2·90 + 220)·1.25^0.8 = 400·1.19544
    ("clamps-price thrust-ends=2 clamp-price=90 ends-price=220 nominal-diameter=40mm", "", "478.18"),
    ("fastening-price fastener-price=2 fasteners=192 joint-price=35 segments=12 gauge-price=90", "", "859.0"),
    ("fixed-and-length-price fixed-price=1100 metre-price=550 travel=11m", "", "7150.0"),
    ("upkeep-labour upkeep-hours=4h upkeep-hours-per-metre=1h travel=3m labour-rate=60", "", "420.0"),
    (
        "purchase-cost element-cost=1 support-cost=2 reduction-cost=3 motor-cost=4 feedback-cost=5 table-cost=7 fitting-cost=6 cover-cost=8",
        "",
        "36.0",
    ),
    // what is ordered together waits for the last part
    ("longer-delivery parts-lead-time=6weeks scale-lead-time=4weeks", "s", "3628800"),
    ("longer-delivery parts-lead-time=6weeks scale-lead-time=9weeks", "s", "5443200"),
    ("service-hours service-years=10years hours-per-year=4000h", "s", "144000000"),
    ("same-length value=3mm", "mm", "3.0"),
    ("same-temperature value=3K", "K", "3.0"),
];

fn call(line: &str) -> axiswright::calc::Answer {
    let mut words = line.split(' ').filter(|word| !word.is_empty());
    let id = words.next().unwrap();
    let arguments: Vec<(String, String)> =
        words.map(|word| word.split_once('=').unwrap()).map(|(name, text)| (name.into(), text.into())).collect();
    calculate(id, &arguments).unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn every_row_is_met_to_its_last_digit() {
    let mut wrong = Vec::new();
    for (line, unit, expected) in [
        HAND,
        axis_test::ROWS,
        duty::ROWS,
        edges::ROWS,
        factors::ROWS,
        motors::ROWS,
        racks::ROWS,
        screws::ROWS,
        sides::ROWS,
    ]
    .concat()
    {
        let answer = call(line);
        let decimals = expected.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let half = 0.5 * 10f64.powi(-(decimals as i32));
        let number: f64 = expected.parse().unwrap();
        if answer.unit != unit || (answer.value - number).abs() > half * (1.0 + 1e-6) {
            wrong.push(format!("{line}: {} {}, by hand {expected} {unit}", answer.value, answer.unit));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

/// A formula counts as checked where a test calls it by its id, or names its constant.
#[test]
fn every_formula_is_checked_somewhere() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut tests = String::new();
    read_all(&root.join("tests"), &mut tests);
    let mut formulas = String::new();
    read_all(&root.join("src/formula"), &mut formulas);
    let unchecked: Vec<&str> = entries()
        .map(|entry| entry.note.id)
        .filter(|id| {
            ![' ', '"'].iter().any(|end| tests.contains(&format!("\"{id}{end}")))
                && !constant_is_named(id, &formulas, &tests)
        })
        .collect();
    assert!(unchecked.is_empty(), "no test checks {unchecked:?}");
}

fn read_all(folder: &std::path::Path, text: &mut String) {
    for item in std::fs::read_dir(folder).unwrap() {
        let path = item.unwrap().path();
        if path.is_dir() {
            read_all(&path, text);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            text.push_str(&std::fs::read_to_string(&path).unwrap());
        }
    }
}

/// Whether the tests name the constant whose note has this id.
fn constant_is_named(id: &str, formulas: &str, tests: &str) -> bool {
    let Some(place) = formulas.find(&format!("id: \"{id}\"")) else { return false };
    let Some(start) = formulas[..place].rfind("pub static ") else { return false };
    let name = formulas[start + "pub static ".len()..].split(':').next().unwrap_or_default();
    let is_part = |letter: char| letter.is_alphanumeric() || letter == '_';
    tests.split(|letter: char| !is_part(letter)).any(|word| word == name)
}
