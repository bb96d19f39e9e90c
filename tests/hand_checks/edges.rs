//! Rows on both sides of where an equation changes; the arithmetic stands above each value, in SI units.

pub const ROWS: &[super::Row] = &[
    // 9e−6·2/3
    ("travel-variation grade-number=0 positioning=1 variation-300=3µm travel=1m", "mm", "0.0060000"),
    // (9e−6+17e−6)/2
    ("travel-variation grade-number=2 positioning=1 variation-300=8µm travel=1m", "mm", "0.013000"),
    // 1e−6·2.7·(0.004·√(4000·5000)+2.1)
    ("mean-travel-deviation grade=P2 travel=5m", "µm", "53.969"),
    // 1e−6·5.0·(0.004·√(5000·6300)+2.1)
    ("mean-travel-deviation grade=P4 travel=6.3m", "µm", "122.75"),
    // 1e−6·3.7·(0.004·√(6300·8000)+2.1)
    ("mean-travel-deviation grade=P3 travel=8m", "µm", "112.84"),
    // 1e−6·0.75·2.0·(0.004·√(6300·8000)+2.1)
    ("mean-travel-deviation grade=P0 travel=8m", "µm", "45.746"),
    ("root-surface-factor-soft root-roughness=0.5µm", "1", "1.0700"),
    // 5.306−4.203·11^0.01
    ("root-surface-factor-soft root-roughness=10µm", "1", "1.0010"),
    ("root-surface-factor root-roughness=0.5µm", "1", "1.1200"),
    // 1.674−0.529·11^0.1
    ("root-surface-factor root-roughness=10µm", "1", "1.0017"),
    // 1000/(20·π·0.04·1)·(1−(1−e^(−0.0009))/0.0009)/0.0009
    (
        "screw-warming heat=1kW nominal-diameter=40mm stroke=0.9mm heat-transfer=20W/(m²·K) fin-length=1m length-warming=1K",
        "K",
        "198.8840",
    ),
    // 1000/(20·π·0.04·0.5)·(1−(1−e^(−4))/4)/4
    (
        "screw-warming heat=1kW nominal-diameter=40mm stroke=2m heat-transfer=20W/(m²·K) fin-length=0.5m length-warming=1K",
        "K",
        "150.12",
    ),
    (
        "screw-warming heat=0.001kW nominal-diameter=40mm stroke=2m heat-transfer=20W/(m²·K) fin-length=0.5m length-warming=3K",
        "K",
        "3.0000",
    ),
    ("inertia-ratio-target acceleration=5m/s²", "1", "3.0000"),
    ("inertia-ratio-target acceleration=4.99m/s²", "1", "5.0000"),
    ("inertia-ratio-target acceleration=1m/s²", "1", "5.0000"),
    ("inertia-ratio-target acceleration=0.99m/s²", "1", "10.000"),
    ("first-mode-target mass=300kg travel=1m", "Hz", "40.000"),
    ("first-mode-target mass=299kg travel=1m", "Hz", "60.000"),
    ("first-mode-target mass=2000kg travel=5.9m", "Hz", "40.000"),
    ("first-mode-target mass=2001kg travel=1m", "Hz", "25.000"),
    ("first-mode-target mass=200kg travel=6m", "Hz", "25.000"),
    ("site-factor altitude=0 ambient-temperature=150°C winding-temperature=140°C", "1", "0.0"),
    // 0.1·0.1^2/2/(0.8·1−0.3)
    (
        "buffer-stroke mass=0.1kg speed=0.1m/s buffer-force=1N drive-force=0.3N angle=0deg buffer-efficiency=0.8",
        "mm",
        "1.0000",
    ),
    // 20·0.5^2/2/(0.7·900−200−20·g·0.5)
    (
        "buffer-stroke mass=20kg speed=0.5m/s buffer-force=900N drive-force=200N angle=30deg buffer-efficiency=0.7",
        "mm",
        "7.5316",
    ),
    // 0.001/(0.8−0.2−0.1)
    (
        "end-stop-stroke end-stop-energy=0.001J buffer-force=1N buffer-efficiency=0.8 drive-push=0.2N gravity-force=0.1N",
        "mm",
        "2.0000",
    ),
    // √((9+16)/2)
    ("rms-torque torques=3N·m,4N·m times=0.5s,0.5s", "N·m", "3.5355"),
    // √((9·2+16)/3)
    ("rms-torque torques=3N·m,4N·m times=2s,1s", "N·m", "3.3665"),
    // max((9/15)^2,(20/16)^2−((20/16)^2−0.36)·e^(−0.5/60),(18/16)^2−((18/16)^2−0.36)·e^(−10/60))
    (
        "winding-heat torques=10N·m,30N·m,20N·m,18N·m speeds=0,0,0.5m/s,-0.2m/s accelerations=0,0,2m/s²,0 longest-ramp-time=0.5s travel=2m standstill-torque=16N·m rms-torque=9N·m continuous-torque=15N·m winding-time=60s",
        "1",
        "0.49903",
    ),
    // max(20/(60·2500/(0.7/0.04·3·60)),30/60)
    (
        "weakened-torque-use torques=20N·m,-30N·m top-speeds=0.7m/s,-0.5m/s travel-per-turn=40mm reduction=3 peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min",
        "1",
        "0.50000",
    ),
    (
        "rack-flank-equivalent-force phase-force=9kN,1kN phase-acceleration=0.5m/s²,0 phase-moves=700,700 moves-per-hour=700 endurance=10kN tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "9000.0",
    ),
    (
        "rack-flank-equivalent-force phase-force=9kN,1kN phase-acceleration=-0.5m/s²,0 phase-moves=700,700 moves-per-hour=700 endurance=10kN tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "9000.0",
    ),
    (
        "rack-root-equivalent-force phase-force=1kN,-9kN phase-acceleration=0.5m/s²,0 phase-moves=700,700 moves-per-hour=700 endurance=10kN root-static-cycles=1e3 tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "9000.0",
    ),
    // 0.5·0.5^(2·log(1/0.85)/log(1e10/5e7))
    (
        "pinion-flank-equivalent-force phase-force=0.5N,0 phase-share=50%,50% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "0.47918",
    ),
    // 2·0.85·0.01·0.5·0.6·2·π·3/0.04
    (
        "regenerated-power torques=0.001N·m,-0.01N·m speeds=0.5m/s,0.5m/s shares=40%,60% travel-per-turn=40mm reduction=3 drives=2 efficiency=0.85",
        "kW",
        "0.0024033",
    ),
    // 2·0.01·0.5·2·π·3/0.04·0.4/0.85
    (
        "mean-power torques=0.01N·m,-0.001N·m speeds=0.5m/s,0.5m/s shares=40%,60% travel-per-turn=40mm reduction=3 drives=2 efficiency=0.85",
        "kW",
        "0.0022176",
    ),
    ("gearbox-efficiency-at-load reduction-efficiency=0.95 mean-output-torque=0 drag-torque=1N·m", "1", "0.0"),
    (
        "gearbox-efficiency-at-load reduction-efficiency=0.5 mean-output-torque=0.25N·m drag-torque=0.5N·m",
        "1",
        "0.25000",
    ),
    ("standing-torque torques=0.2N·m,-0.3N·m,5N·m speeds=0,0,1m/s", "N·m", "0.30000"),
    ("loaded-half force=0.5N preload=0.1N", "N", "0.50000"),
    // 0.1·(1+0.2/(2^1.5·0.1))^1.5
    ("loaded-half force=0.2N preload=0.1N", "N", "0.22304"),
    ("set-torque motor-peak-torque=35N·m torque-margin=1.5 peak-torque=0.2N·m holding-torque=0.4N·m", "N·m", "0.60000"),
];
