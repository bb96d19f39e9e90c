//! Rows worked by hand: moves, phases and energy.

pub const ROWS: &[super::Row] = &[
    // moves of a duty: (0.1·1 + 0.05·0.4)/0.15; 3600·(0.1/1 + 0.05/0.4)
    (
        "mean-stroke phase-share=50%,50% phase-speed=0.2m/s,-0.1m/s phase-stroke=1m,0.4m usual-stroke=0.3m",
        "mm",
        "800.0",
    ),
    ("mean-stroke phase-share=1 phase-speed=0 phase-stroke=0 usual-stroke=0.3m", "mm", "300.0"),
    ("moves-per-hour phase-share=50%,50% phase-speed=0.2m/s,-0.1m/s phase-stroke=1m,0.4m", "1", "810.0"),
    ("moves-per-hour phase-share=50%,50% phase-speed=0.2m/s,0 phase-stroke=1m,0", "1", "360.0"),
    // the four branches of the seven segments. 0.05 + 0.1, 0.8/0.5 − 0.15; v_q² = [0.0625·0.05/20 + 0.05·0.203125/3
    // + 0.05·(0.25 − 0.5·0.25/3 + 0.003125)]/0.15 = 0.0940972
    ("reached-speed travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/min", "30.000"),
    ("reached-acceleration travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/s²", "5.0000"),
    ("jerk-time travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.0500"),
    ("speeding-time travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.1500"),
    ("cruise-time travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "1.4500"),
    ("speeding-rms-speed travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/min", "18.4052"),
    // √(0.5·100), √(0.5/100), 0.8/0.5 − 2·0.0707107; u = v_p: 0.25·(1/20 + 1 − 1/3 + 1/20)/2 = 0.0958333
    ("reached-acceleration travel=0.8m speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "m/s²", "7.0711"),
    ("jerk-time travel=0.8m speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "s", "0.070711"),
    ("cruise-time travel=0.8m speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "s", "1.458579"),
    ("speeding-rms-speed travel=0.8m speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "m/min", "18.5742"),
    // √(0.125² + 0.2) − 0.125 = 0.339354; 0.339354/5 + 0.05
    ("reached-speed travel=0.04m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/min", "20.3613"),
    ("speeding-time travel=0.04m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.117871"),
    ("cruise-time travel=0.04m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.0"),
    // ∛(0.01/200) = 0.0368403; 100·0.0368403², 100·0.0368403
    ("reached-speed travel=0.01m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/min", "8.14325"),
    ("reached-acceleration travel=0.01m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "m/s²", "3.68403"),
    ("speeding-time travel=0.01m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.0736806"),
    // counterbalance: 0.85·300, 255·sin 30°; 0.85·1.18; 555·3 + 2942·0.15 + 60
    ("counterweight-mass counterweight-share=85% driven-mass=300kg angle=90deg", "kg", "255.00"),
    ("counterweight-mass counterweight-share=85% driven-mass=300kg angle=30deg", "kg", "127.50"),
    ("accelerated-mass driven-mass=300kg counterweight-mass=255kg", "kg", "555.0"),
    ("rope-slackening acceleration=4.903325m/s²", "1", "0.50000"),
    // (12·2π/0.01 − 588.4 + 60·9.80665)/(470·9.80665); with a brake of 20 N·m 12 566.4/4609.1
    (
        "stop-rope-slackening set-torque=12N·m brake-torque=8N·m travel-per-turn=10mm reduction=1 gravity-force=588.399N counterweight-mass=60kg accelerated-mass=120kg reduced-mass=350kg",
        "1",
        "1.6358",
    ),
    (
        "stop-rope-slackening set-torque=12N·m brake-torque=20N·m travel-per-turn=10mm reduction=1 gravity-force=588.399N counterweight-mass=60kg accelerated-mass=120kg reduced-mass=350kg",
        "1",
        "2.7264",
    ),
    ("greatest-balance counterbalance-share=85% counterbalance-ripple=18%", "1", "1.0030"),
    (
        "phase-force accelerated-mass=555kg phase-acceleration=3m/s² gravity-force=2942N phase-balance=85% friction-force=60N phase-direction=1 phase-drive-process-force=0 cutting-both-ways=0",
        "N",
        "2166.3",
    ),
    // a force that lifts 800 N off 1000 N is not relied on; one of 2500 N is the worse; either way adds
    (
        "phase-force accelerated-mass=0 phase-acceleration=0 gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=-1 phase-drive-process-force=-800N cutting-both-ways=0",
        "N",
        "1000.0",
    ),
    (
        "phase-force accelerated-mass=0 phase-acceleration=0 gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=-1 phase-drive-process-force=-2.5kN cutting-both-ways=0",
        "N",
        "-1500.0",
    ),
    (
        "phase-force accelerated-mass=100kg phase-acceleration=-2m/s² gravity-force=0 phase-balance=0 friction-force=50N phase-direction=1 phase-drive-process-force=800N cutting-both-ways=1",
        "N",
        "-950.0",
    ),
    // cable chain (notes on chains: 5.25 kg · 4 m/s² = 21 N and 5 N): 3.5·6/4; 0.05·3.5·3·9.80665
    ("cable-chain-mass mass-per-metre=3.5kg/m travel=6m", "kg", "5.2500"),
    ("cable-chain-force friction=0.05 mass-per-metre=3.5kg/m travel=6m angle=0", "N", "5.1485"),
    ("cable-chain-force friction=0.05 mass-per-metre=3.5kg/m travel=6m angle=90deg", "N", "0.0"),
    ("drag-sum wiper-force=40N cable-chain-force=5.1N", "N", "45.10"),
    ("added-mass drive-mass=40kg counterweight-mass=25kg drives=2 mass-per-metre=3.5kg/m travel=6m", "kg", "100.50"),
    // energy: 10·0.5·2π/0.01·0.1·0.85; 0.25·(0.1 + 0.05), 0.5·√(0.5/100)
    ("energy-per-hour mean-power=1.848kW", "J", "6652800"),
    (
        "regenerated-power torques=-10N·m,4N·m speeds=0.5m/s,0.5m/s shares=10%,90% travel-per-turn=10mm reduction=1 drives=1 efficiency=0.85",
        "kW",
        "0.26704",
    ),
    ("slowing-distance speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "mm", "37.500"),
    ("slowing-distance speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "mm", "35.3553"),
    // load 37.5 + (2942 − 40)·0.0375 = 146.325; rotor 0.006·314.159²/2 = 296.088; drag 0.5·23.5619 = 11.781;
    // 0.85·(0.95·146.325 + 284.307)
    (
        "stop-energy accelerated-mass=300kg speed=0.5m/s rotating-inertia=60kg·cm² travel-per-turn=10mm reduction=1 gravity-force=2942N counterbalance-share=0 friction-force=40N drag-torque=0.5N·m back-efficiency=0.95 efficiency=0.85 slowing-distance=37.5mm drives=1",
        "J",
        "359.82",
    ),
    (
        "stop-energy accelerated-mass=1kg speed=0.5m/s rotating-inertia=0 travel-per-turn=10mm reduction=1 gravity-force=0 counterbalance-share=0 friction-force=40N drag-torque=0.5N·m back-efficiency=0.95 efficiency=0.85 slowing-distance=37.5mm drives=1",
        "J",
        "0.0",
    ),
    ("jerk-periods first-mode=40Hz acceleration=5m/s² jerk=100m/s³", "1", "2.0000"),
];
