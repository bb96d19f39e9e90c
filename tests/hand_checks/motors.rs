//! Rows worked by hand: motors, brakes, belts and stops.

pub const ROWS: &[super::Row] = &[
    // supply and site: 400·0.9/400; 480·0.9/400 is above 1; 2500·0.9
    ("mass-ratio driven-mass=600kg reduced-mass=3500kg", "1", "0.171429"),
    // 40·√3
    ("free-mode first-mode=40Hz mass-ratio=2", "Hz", "69.282"),
    ("following-error speed=0.5m/s gain=50/s feedforward=90%", "mm", "1.0"),
    // 0.01/(0.05·376.9911²) = 1.407238 µm outward, 376.9911² = 142122.3
    ("fed-circle-error circle-error=40µm speed=0.1m/s radius=50mm first-mode=60Hz feedback=0", "mm", "0.0385928"),
    ("fed-circle-error circle-error=0µm speed=0.1m/s radius=50mm first-mode=60Hz feedback=0", "mm", "-0.0014072"),
    ("fed-circle-error circle-error=40µm speed=0.1m/s radius=50mm first-mode=60Hz feedback=1", "mm", "0.0400"),
    // 5/188.4956² = 140.7239 µm, four times; π·30·0.1 = 9.424778
    ("jerk-envelope acceleration=5m/s² jerk=500m/s³ first-mode=30Hz", "mm", "0.562895"),
    ("jerk-envelope acceleration=5m/s² jerk=50m/s³ first-mode=30Hz", "mm", "0.0597251"),
    ("contour-error circle-error=4µm fed-circle-error=-15µm", "mm", "0.015"),
    // ζ 0.7, ω_1 223.607: K_p = 1.4·223.607·1000·√(6 − 1.96); 600·(1/(K_p·40) + 1e-8)
    ("reversal-spike friction=300N stiffness=100N/µm reduced-mass=1000kg mass-ratio=2 gain=40/s", "mm", "0.0298390"),
    // π·30·0.01 = 0.942478, sin/x = 0.858394; 5/(188.496)²
    ("jerk-residue acceleration=5m/s² jerk=500m/s³ first-mode=30Hz", "mm", "0.1207965"),
    (
        "settling-time acceleration=2m/s² gain=50/s window=10µm jerk-envelope=0 first-mode=30Hz damping=0.03",
        "s",
        "0.0876405",
    ),
    ("voltage-factor supply-voltage=400V supply-tolerance=10% rated-voltage=400V", "1", "0.900"),
    ("voltage-factor supply-voltage=480V supply-tolerance=10% rated-voltage=400V", "1", "1.000"),
    ("speed-at-voltage rated-speed=2500/min voltage-factor=0.9", "1/min", "2250.0"),
    // 0.9·√(95/105) = 0.9·0.951190; better than the rated site is not credited
    ("site-factor altitude=2000m ambient-temperature=50°C winding-temperature=145°C", "1", "0.85607"),
    ("site-factor altitude=0m ambient-temperature=20°C winding-temperature=145°C", "1", "1.00000"),
    ("torque-at-site rated-torque=20N·m site-factor=0.9", "N·m", "18.00"),
    // field weakening: 60·2500/3500; 21.43/42.857; up to the knee and beyond the limit
    ("weakened-peak-torque speed=3500/min peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min", "N·m", "42.857"),
    ("weakened-peak-torque speed=2500/min peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min", "N·m", "60.000"),
    ("weakened-peak-torque speed=4501/min peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min", "N·m", "0.000"),
    (
        "weakened-torque-use torques=21.4286N·m,30N·m top-speeds=35m/min,25m/min travel-per-turn=10mm reduction=1 peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min",
        "1",
        "0.50000",
    ),
    // 400 − 144·(4/3)² = 144; 400 − 144·4 is below zero
    (
        "unweakened-continuous-torque speed=4000/min standstill-torque=20N·m rated-torque=16N·m rated-speed=3000/min",
        "N·m",
        "12.000",
    ),
    (
        "unweakened-continuous-torque speed=6000/min standstill-torque=20N·m rated-torque=16N·m rated-speed=3000/min",
        "N·m",
        "0.000",
    ),
    // winding: 60·ln(9/8); 60·ln(8.75/8)
    ("overload-time torque-ratio=3 ratio-before=0 winding-time=60s", "s", "7.067"),
    ("overload-time torque-ratio=3 ratio-before=0.5 winding-time=60s", "s", "5.377"),
    ("overload-time torque-ratio=3 ratio-before=1 winding-time=60s", "s", "0.000"),
    // ramp of 0.5/1 = 0.5 s at r² = 9 from 0.25: 9 − 8.75·exp(−1/120) = 0.32261
    (
        "winding-heat torques=36N·m,12N·m speeds=0.25m/s,0.5m/s accelerations=1m/s²,0 longest-ramp-time=0.5s travel=1m standstill-torque=12N·m rms-torque=6N·m continuous-torque=12N·m winding-time=60s",
        "1",
        "0.32261",
    ),
    // a cut over 1 m at 0.05 m/s is 20 s at r² = 2.25: 2.25 − 2·exp(−1/3) = 0.81694
    (
        "winding-heat torques=18N·m speeds=0.05m/s accelerations=0 longest-ramp-time=0.5s travel=1m standstill-torque=12N·m rms-torque=6N·m continuous-torque=12N·m winding-time=60s",
        "1",
        "0.81694",
    ),
    ("standing-torque torques=5N·m,-9N·m,-6N·m speeds=0,0.1m/s,0", "N·m", "6.00"),
    ("short-time-factor run-time=10min frame-time=30min", "1", "1.878"),
    ("intermittent-factor cycle-time=1s load-share=40% frame-time=30min", "1", "1.581"),
    // matching: 2000·0.01/2π + 0.0025648·2·2π/0.01 = 3.1831 + 3.2230
    (
        "load-rms-torque forces=2kN accelerations=2m/s² shares=1 travel-per-turn=10mm shaft-inertia=25.648kg·cm²",
        "N·m",
        "6.4061",
    ),
    // half of the time 3.1831, half nothing: over √2
    (
        "load-rms-torque forces=2kN,0 accelerations=0,0 shares=50%,50% travel-per-turn=10mm shaft-inertia=25.648kg·cm²",
        "N·m",
        "2.2508",
    ),
    ("load-rms-acceleration accelerations=2m/s² shares=1 travel-per-turn=10mm", "rad/s²", "1256.6"),
    ("optimum-ratio load-torque=2.5N·m load-acceleration=10rad/s² rotor-inertia=0.0016kg·m²", "1", "12.50"),
    ("optimum-lead rotating-inertia=88.648kg·cm² driven-mass=600kg reduction=1", "mm", "24.15"),
    ("inertia-ratio-target acceleration=8m/s²", "1", "3.0"),
    ("inertia-ratio-target acceleration=2m/s²", "1", "5.0"),
    ("inertia-ratio-target acceleration=0.5m/s²", "1", "10.0"),
    ("first-mode-target mass=200kg travel=1m", "Hz", "60.0"),
    ("first-mode-target mass=1200kg travel=1m", "Hz", "40.0"),
    ("first-mode-target mass=1200kg travel=11m", "Hz", "25.0"),
    ("first-mode-target mass=2500kg travel=1m", "Hz", "25.0"),
    // belt of 8 mm, 24 and 48 teeth, 300 mm apart: 8·24/π; √(90 000 − 30.5577²)
    ("driving-pulley pitch=8mm teeth=24", "mm", "61.115"),
    ("driven-pulley driving-pulley=61.115mm reduction=2", "mm", "122.230"),
    ("belt-span driving-pulley=61.115mm driven-pulley=122.23mm centre-distance=300mm", "mm", "298.440"),
    // arcsin(0.101858) = 0.102035; 24·(π − 0.204070)/2π
    (
        "teeth-in-mesh driving-teeth=24 driving-pulley=61.115mm driven-pulley=122.23mm centre-distance=300mm",
        "1",
        "11.2205",
    ),
    // the smaller pulley is the driven one: 24 teeth of 48
    (
        "teeth-in-mesh driving-teeth=48 driving-pulley=122.23mm driven-pulley=61.115mm centre-distance=300mm",
        "1",
        "11.2205",
    ),
    // 2·600 000/0.29844·0.061115²
    (
        "belt-stiffness specific-stiffness=20kN/mm belt-width=30mm belt-span=298.44mm driven-pulley=122.23mm",
        "N·m/rad",
        "15018.3",
    ),
    ("belt-pull-limit pull-per-width=45N/mm belt-width=30mm", "N", "1350.0"),
    ("pull-torque belt-pull-limit=1350N driven-pulley=122.23mm", "N·m", "82.505"),
    ("belt-pull shaft-torque=40N·m driven-pulley=122.23mm", "N", "654.5"),
    ("belt-pretension pretension-share=0.8 belt-pull=654.5N", "N", "523.60"),
    ("belt-shaft-load belt-pretension=523.6N belt-span=298.44mm centre-distance=300mm", "N", "1041.8"),
    ("belt-speed motor-speed=3000/min driving-pulley=61.115mm", "m/min", "576.00"),
    // √(500/0.171)/0.59688
    ("span-frequency belt-pretension=500N belt-mass=0.171kg/m belt-span=298.44mm", "Hz", "90.594"),
    // √(15 000·(166.667 + 245.098))/2π; at twice the ratio half of it
    (
        "coupling-resonance reduction-stiffness=15kN·m/rad rotor-inertia=60kg·cm² load-inertia=40.8kg·cm² reduction=1",
        "Hz",
        "395.54",
    ),
    (
        "coupling-resonance reduction-stiffness=15kN·m/rad rotor-inertia=60kg·cm² load-inertia=40.8kg·cm² reduction=2",
        "Hz",
        "197.77",
    ),
    // 12·0.1715·√(101.8e6/3500)/2π
    ("coupling-floor total-stiffness=101.8N/µm reduced-mass=3500kg", "Hz", "55.86"),
    // stops: 12·2π/0.01; (7539.82 − 2941.995)/3458.27; 0.3·0.04 + 0.09/3
    ("drive-push set-torque=12N·m travel-per-turn=10mm reduction=1", "N", "7539.8"),
    (
        "stop-deceleration drive-push=7539.82N gravity-force=2941.995N driven-mass=300kg reduced-mass=3158.27kg",
        "m/s²",
        "1.3295",
    ),
    // (7539.82 + 2941.995)/3458.27; with 255 kg on a rope (10 481.8 − 2500.7)/3713.27
    (
        "greatest-stop-deceleration drive-push=7539.82N gravity-force=2941.995N counterweight-mass=0 accelerated-mass=300kg reduced-mass=3158.27kg",
        "m/s²",
        "3.0309",
    ),
    (
        "greatest-stop-deceleration drive-push=7539.82N gravity-force=2941.995N counterweight-mass=255kg accelerated-mass=555kg reduced-mass=3158.27kg",
        "m/s²",
        "2.1494",
    ),
    ("emergency-stop-distance speed=0.3m/s stop-reaction=40ms stop-deceleration=1.5m/s²", "mm", "42.00"),
    // ½·3458·0.09; 3·5; 155.61/(12 000 − 5000 − 2942)
    // ½·(900·450/450 + 2·145)·0.0625
    (
        "whole-end-stop-energy moving-mass=900kg accelerated-mass=450kg driven-mass=450kg reduced-mass=145kg units=2 speed=0.25m/s",
        "J",
        "37.19",
    ),
    ("end-stop-energy driven-mass=300kg reduced-mass=3158kg speed=0.3m/s", "J", "155.61"),
    ("buffer-force buffer-share=3 drive-push=5kN", "N", "15000.0"),
    (
        "end-stop-stroke end-stop-energy=155.61J buffer-force=15kN buffer-efficiency=0.8 drive-push=5kN gravity-force=2942N",
        "mm",
        "38.346",
    ),
    // 1.3·2941.995; 1.3·4.6823; 0.03 + 0.5·9.80665·0.0036; 0.0176520 + 0.588399²/10
    ("brake-test-load brake-test-factor=1.3 gravity-force=2941.995N", "N", "3824.6"),
    ("brake-test-torque brake-test-factor=1.3 holding-torque=4.6823N·m", "N·m", "6.0870"),
    ("fall-before-brake speed=0.5m/s brake-delay=60ms fall-acceleration=9.80665m/s²", "mm", "47.652"),
    ("drop-from-rest brake-delay=60ms fall-acceleration=9.80665m/s² brake-deceleration=5m/s²", "mm", "52.273"),
    // 0.5·√(1e8·493.48); 5000 + √(25e6 + 1.23370e10); 200/793.48
    ("crash-force speed=0.5m/s total-stiffness=100N/µm reduced-mass=493.48kg drive-push=0N", "N", "111072.0"),
    ("crash-force speed=0.5m/s total-stiffness=100N/µm reduced-mass=493.48kg drive-push=5kN", "N", "116184.5"),
    ("coasting-deceleration friction-force=200N driven-mass=300kg reduced-mass=493.48kg", "m/s²", "0.25205"),
    ("brake-stops brake-life-energy=420kJ brake-work=332.7J", "1", "1262.4"),
    ("expected-stops power-losses=12 service-years=10years", "1", "120.0"),
    // electronics: 2·(105 + 1600); 2·110
    ("stop-energy-limit bus-energy=105J resistor-energy=1600J drives=2", "J", "3410.0"),
    ("regeneration-limit resistor-power=110W drives=2", "kW", "0.220"),
];
