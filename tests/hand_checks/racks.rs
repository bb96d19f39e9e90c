//! Rows worked by hand: racks, pinions and their gearboxes.

pub const ROWS: &[super::Row] = &[
    // straight, z 20, grade 6, 1 m/s: s = 0.2, s·K_3 = 0.4; 1 + 0.0193·0.4; 14.9·24·0.4
    (
        "tooth-load-slope module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm quality=6 speed=1m/s",
        "1",
        "1.00772",
    ),
    (
        "tooth-load-offset module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm quality=6 speed=1m/s",
        "N",
        "143.04",
    ),
    // (1 + 0.1683·0.4)·3/(4 − 1.768824)
    (
        "light-load-factor module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm quality=6 speed=1m/s",
        "1",
        "1.43510",
    ),
    // (1500·0.92)²·40·24/(1.23639·6.22288·36028.7·0.743725), stresses in MPa: Z_B², Z_H², Z_E², Z_ε²
    (
        "pinion-flank-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm flank-strength=1380MPa",
        "N",
        "8867.25",
    ),
    (
        "rack-flank-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm flank-strength=1100.32MPa",
        "N",
        "6970.4",
    ),
    // 645.4·0.99184·48/(1.4104·1.8893), 516.6·1.00539·48/(1.1119·2.4966), form factors printed for 20 straight teeth
    (
        "pinion-root-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm root-strength=645.4MPa slip-layer=3µm",
        "N",
        "11531",
    ),
    (
        "rack-root-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm root-strength=516.6MPa slip-layer=3µm",
        "N",
        "8981",
    ),
    // a through-hardened pinion of 306 MPa, slip layer 0.0111 mm: 428.4·0.98507·87/(1.4104·1.8893)
    (
        "pinion-root-endurance module=3mm teeth=20 helix=0 profile-shift=0 face-width=29mm root-strength=428.4MPa slip-layer=11.1µm",
        "N",
        "13778",
    ),
    // a soft rack of 211 MPa, slip layer 0.061 mm: 295.4·1.02027·87/(1.1119·2.4966)
    (
        "rack-root-endurance module=3mm teeth=20 helix=0 profile-shift=0 face-width=29mm root-strength=295.4MPa slip-layer=61µm",
        "N",
        "9446",
    ),
    ("flank-strength contact-limit=1500MPa film-factor=0.92", "MPa", "1380.0"),
    ("flank-strength contact-limit=545MPa film-factor=0.85", "MPa", "463.25"),
    ("root-strength bending-limit=461MPa root-size-factor=1 root-surface-factor=1 reversal-factor=0.7", "MPa", "645.4"),
    // 2·211·0.982·0.973071·0.7
    (
        "root-strength bending-limit=211MPa root-size-factor=0.982 root-surface-factor=0.973071 reversal-factor=0.7",
        "MPa",
        "282.271",
    ),
    ("root-size-factor-hardened module=8mm", "1", "0.97"),
    ("root-size-factor-hardened module=40mm", "1", "0.80"),
    ("root-size-factor module=8mm", "1", "0.982"),
    ("root-size-factor module=4mm", "1", "1.0"),
    // 17^0.1 = 1.32753
    ("root-surface-factor root-roughness=16µm", "1", "0.97174"),
    ("root-surface-factor-soft root-roughness=20µm", "1", "0.97307"),
    // 2.5·100^(−0.11445) and 2.5·10^(−0.16065)
    ("root-life-factor cycles=1e5 root-static-cycles=1e3", "1", "1.4759"),
    ("root-life-factor cycles=1e5 root-static-cycles=1e4", "1", "1.7270"),
    // q 5.3333, exponent 0.81789
    ("root-face-load-factor face-load-factor=1.3 face-width=24mm module=2mm", "1", "1.23935"),
    ("mounted-endurance endurance=10kN face-load-factor=1.3", "N", "7692.3"),
    // 8 kN·0.97922², less 100 N, over 1.1
    (
        "flank-force mounted-endurance=8kN cycles=1e8 tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "6879.0",
    ),
    (
        "root-force mounted-endurance=8kN root-life-factor=1.134 tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "8156.4",
    ),
    // below 100 N/mm: 4.2 kN over 1.9
    (
        "root-force mounted-endurance=4.2kN root-life-factor=1 tooth-load-slope=1.1 tooth-load-offset=100N light-load-factor=1.9 face-width=24mm",
        "N",
        "2210.5",
    ),
    // (12 kN − 120 N)/1.2/3
    (
        "alignment-force pinion-flank-endurance=30kN rack-flank-endurance=12kN pinion-root-endurance=24kN rack-root-endurance=15kN tooth-load-slope=1.2 tooth-load-offset=120N light-load-factor=1.5 face-width=24mm",
        "N",
        "3300",
    ),
    // √(0.3² + 0.05²), half of it
    ("mounting-slope pinion-squareness=30µm seat-straightness=50µm misalignment-share=1", "1", "3.0414e-4"),
    ("mounting-slope pinion-squareness=30µm seat-straightness=50µm misalignment-share=0.5", "1", "1.52069e-4"),
    ("face-load-factor grade-face-load-factor=1.15 alignment-face-load-factor=1.47", "1", "1.47"),
    ("face-load-factor grade-face-load-factor=1.45 alignment-face-load-factor=1.2", "1", "1.45"),
    // only 12 kN counts on its flank: 0.2·1.2^6.6112 = 0.66757; 10 kN·0.66757^(1/16.3006)
    (
        "pinion-flank-equivalent-force phase-force=12kN,-9kN phase-share=20%,80% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9755.2",
    ),
    // level at 1.792·2.4 = 4.3008 kN, up to 4.3008/1.1 = 3.9098 kN; a hundredth of the turns counts 0.01^(1/16.3006) = 0.75388.
    // 3 kN is felt as the level: 3 kN·0.75388; 5 kN as 5.5, of which 4.1464 is below it: 3.9098·4.1464/4.3008
    (
        "pinion-flank-equivalent-force phase-force=3kN,1kN phase-share=1%,99% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1.1 tooth-load-offset=0 light-load-factor=1.792 face-width=24mm",
        "N",
        "2261.7",
    ),
    (
        "pinion-flank-equivalent-force phase-force=5kN,1kN phase-share=1%,99% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1.1 tooth-load-offset=0 light-load-factor=1.792 face-width=24mm",
        "N",
        "3769.4",
    ),
    // 0.2·1.2^8.7378 + 0.8·0.9^49.9125 = 0.98794; 10 kN·0.98794^(1/49.9125)
    (
        "pinion-root-equivalent-force phase-force=12kN,-9kN phase-share=20%,80% phase-speed=1m/s,1m/s endurance=10kN root-static-cycles=1e3 tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9997.6",
    ),
    // through-hardened, the line begins at 10⁴: 0.2·1.2^6.2249 + 0.8·0.9^49.9125 = 0.62635; 10 kN·0.62635^(1/49.9125)
    (
        "pinion-root-equivalent-force phase-force=12kN,-9kN phase-share=20%,80% phase-speed=1m/s,1m/s endurance=10kN root-static-cycles=1e4 tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9906.7",
    ),
    // 720 moves with 9 kN in the cruise and 400 with 11 kN; 0.64286·0.9^16.3006 + 0.35714·1.1^6.6112 = 0.78600
    (
        "rack-flank-equivalent-force phase-force=1kN,9kN,-1kN,1kN,11kN,-1kN phase-acceleration=1m/s²,0,-1m/s²,1m/s²,0,-1m/s² phase-moves=720,720,720,400,400,400 moves-per-hour=1120 endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9853.4",
    ),
    (
        "rack-root-equivalent-force phase-force=1kN,9kN,-1kN,1kN,11kN,-1kN phase-acceleration=1m/s²,0,-1m/s²,1m/s²,0,-1m/s² phase-moves=720,720,720,400,400,400 moves-per-hour=1120 endurance=10kN root-static-cycles=1e3 tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9961.5",
    ),
    // 0.9 of 24 µm and 10 µm of the seat
    ("pinion-run-out pinion-total-pitch-deviation=24µm seat-run-out=10µm", "mm", "0.03160"),
    // 20 µm/cos 21.117°
    ("run-out-error pinion-run-out=20µm helix-angle=19.52808deg", "mm", "0.02144"),
    ("play-variation pinion-run-out=7µm height-waviness=3µm helix-angle=0", "mm", "0.0072794"),
    ("play-variation pinion-run-out=7µm height-waviness=3µm helix-angle=19.52808deg", "mm", "0.0077237"),
    // √(25.88² + 11.6² + 2²)
    (
        "mapped-error error=129.4µm travel=11m residual=0.2 uncertainty=0.6µm uncertainty-rate=1µm/m drift=2µm",
        "mm",
        "0.028431",
    ),
    // √(8² + 3²)
    (
        "mapped-error error=40µm travel=2.4m residual=0.2 uncertainty=0.6µm uncertainty-rate=1µm/m drift=0µm",
        "mm",
        "0.0085440",
    ),
    // 2·10/300·sin 90° = 0.0666667 mrad, 57.29578 times that in degrees
    ("waviness-tilt height=10µm wavelength=600mm base=300mm", "deg", "0.00381972"),
    // 5 arcsec
    ("tilt-sum stated=3arcsec waviness=4arcsec", "deg", "0.00138889"),
    // 300 mm · 48.4814 µrad
    ("tilt-error arm=300mm tilt=10arcsec", "mm", "0.0145444"),
    // √(3² + 4²) + (2 + 4)/2
    ("direction-error position-errors=6µm,8µm reversals=2µm,4µm scatters=0µm,0µm", "mm", "0.0080"),
    ("length-ratio first=24mm second=42.44mm", "1", "0.56550"),
    ("speed-number speed=3m/s teeth=20", "m/min", "36.0"),
    // 3 m/s over 6.6667 mm
    ("tooth-frequency speed=3m/s module=2mm helix-angle=19.52808deg", "Hz", "450.0"),
    ("marking-speed first-mode=30Hz module=2mm helix-angle=19.52808deg", "m/min", "12.000"),
    ("resonance-distance frequency=24Hz first-mode=30Hz", "1", "0.2"),
    ("overlap-excess overlap-ratio=1.277", "1", "0.277"),
    ("overlap-excess overlap-ratio=0.4", "1", "0.6"),
    ("overlap-excess overlap-ratio=1.9", "1", "0.1"),
    // gearbox
    ("shock-factor moves-per-hour=1000", "1", "1.0"),
    ("shock-factor moves-per-hour=2500", "1", "1.4"),
    ("shock-factor moves-per-hour=9000", "1", "2.0"),
    ("shock-torque output-torque=100N·m shock-factor=1.4", "N·m", "140.0"),
    // 9.6 N·m at nominal speed, half at a quarter of it
    (
        "gearbox-drag-at-speed no-load-torque=1.2N·m reduction=8 input-speed=625/min gearbox-nominal-speed=2500/min",
        "N·m",
        "4.80",
    ),
    // 100/(103.093 + 10)
    (
        "gearbox-efficiency-at-load reduction-efficiency=0.97 mean-output-torque=100N·m drag-torque=10N·m",
        "1",
        "0.88423",
    ),
    // 60 N·m at 31.416 rad/s: 1884.96 W·(1/0.95 − 1) = 99.21 W; 40 W of drag
    (
        "gearbox-heat phase-force=3kN phase-share=1 phase-speed=0.62831853m/s reduction-efficiency=0.95 drag-torque=1.2732395N·m mean-speed=0.62831853m/s travel-per-turn=125.663706mm",
        "kW",
        "0.13921",
    ),
    // 0.0121·8 and 0.0121·11
    ("gearbox-surface frame-size=110mm stages=1", "mm²", "96800"),
    ("gearbox-surface frame-size=110mm stages=2", "mm²", "133100"),
    // 134.2/(20·0.09)
    // (1400 + 400)/2·0.5 W through the teeth, 1/0.95 − 1 of it lost
    (
        "steady-gearbox-heat phase-force=500N,-500N phase-share=50%,50% phase-speed=0.5m/s,-0.5m/s reduction-efficiency=0.95 drag-torque=0N·m mean-speed=0.5m/s travel-per-turn=120mm steady-force=900N",
        "kW",
        "0.0236842",
    ),
    // the square root of 36 and 35
    ("stage-ratio reduction=36 gearbox-stages=2", "1", "6.0"),
    ("stage-ratio reduction=35 gearbox-stages=2", "1", "5.9161"),
    ("gearbox-warming gearbox-heat=134.2W gearbox-surface=0.09m²", "K", "74.56"),
    ("pinion-overhang overhang=35mm face-width=49mm bearing-gap=8mm", "mm", "35.0"),
    ("pinion-overhang overhang=35mm face-width=79mm bearing-gap=8mm", "mm", "47.5"),
    // 0.38620 + 0.35469·42.441/200 = 0.46147; 6 kN·√1.21296; the front bearing has 100/60 of it, 11.01 kN
    (
        "overhung-load force=6kN helix-angle=19.52808deg pinion-diameter=42.441mm pinion-overhang=40mm bearing-span=60mm",
        "N",
        "6608.0",
    ),
    // 4200·85/97.5
    (
        "radial-limit-at-pinion gearbox-radial-limit=4200N overhang=35mm bearing-span=50mm pinion-overhang=47.5mm",
        "N",
        "3661.5",
    ),
    ("axial-load force=6kN helix-angle=19.52808deg", "N", "2128.0"),
    // 20 000 h·1.9^(10/3)·2.5 = 424 900 h, held at 200 000 h; 20 000·1.1^(10/3)
    (
        "gearbox-life gearbox-continuous-torque=190N·m mean-output-torque=100N·m gearbox-nominal-speed=2500/min mean-input-speed=1000/min",
        "s",
        "720000000",
    ),
    (
        "gearbox-life gearbox-continuous-torque=110N·m mean-output-torque=100N·m gearbox-nominal-speed=2500/min mean-input-speed=2500/min",
        "s",
        "98925468",
    ),
    // 79.2308e9/150e6·300·5/0.031831²
    ("motor-side-stiffness gearbox-acceleration-torque=300N·m reduction=5 pinion-diameter=63.662mm", "N/µm", "781.98"),
    // 4·206e9·π/4·0.028²·(1/54e6 − 1/200e6): the note prints 6.85 m
    ("equal-stiffness-travel total-stiffness=54N/µm reference-core=28mm reference-rest=200N/µm", "mm", "6859"),
    ("equal-stiffness-travel total-stiffness=300N/µm reference-core=28mm reference-rest=200N/µm", "mm", "0.0"),
    // a bed of aluminium under a rack of steel
    (
        "bed-growth bed-expansion=23.8µm/(m·K) rack-expansion=11.5µm/(m·K) temperature-swing=10K travel=3m",
        "mm",
        "0.3690",
    ),
    // λ = √(206e9·456e-6·0.0625/250e6) = 153.24 mm; 250e6·12.3e-6·10·0.15324·tanh 3.2628
    (
        "end-fastener-force bed-expansion=23.8µm/(m·K) rack-expansion=11.5µm/(m·K) temperature-swing=10K section-area=456mm² fastener-stiffness=250N/µm fastener-pitch=62.5mm segment-length=1m",
        "N",
        "4698.5",
    ),
    ("slip-reserve slip-force=7.9kN end-fastener-force=1kN sharing-fasteners=3", "N", "4900.0"),
    // r = 0.854701: 1 − r² = 0.269487, 2·0.05·r = 0.0854701, 1/√(0.072623 + 0.007305) = 3.53709
    ("ripple-in-cut ripple=7µm frequency=30Hz first-mode=35.1Hz drive-damping=0.05", "mm", "0.0247599"),
    ("ripple-in-cut ripple=7µm frequency=30Hz first-mode=30Hz drive-damping=0.05", "mm", "0.0700000"),
    ("ripple-in-cut ripple=7µm frequency=90Hz first-mode=30Hz drive-damping=0.05", "mm", "0.00700000"),
    // λ = √(206 GPa·468 mm²·62.5 mm/250 N/µm) = 155.25 mm; 3574 + 2490·e^(−140/155.25)
    (
        "segment-end-force peak-force=3574N bias-force=542N pinion-spacing=140mm section-area=468mm² fastener-stiffness=250N/µm fastener-pitch=62.5mm",
        "N",
        "4584.6",
    ),
    // a second pinion that pulls the other way relieves the end: left out
    (
        "segment-end-force peak-force=1000N bias-force=800N pinion-spacing=300mm section-area=468mm² fastener-stiffness=250N/µm fastener-pitch=62.5mm",
        "N",
        "1000.0",
    ),
    ("twin-rack-length travel=8m overtravel=60mm pinion-diameter=64mm pinion-spacing=300mm", "mm", "8484.0"),
    ("slip-reserve slip-force=7.9kN end-fastener-force=4kN sharing-fasteners=3", "N", "0.0"),
    // slope 6.4 kN·0.035²/(2·206e9·5.1472e-8) = 3.697e-4, gap 8.87 µm, 7.54 µm left; 7.54·0.85·417·1.14915/(2·5970) = 0.2573
    (
        "alignment-face-load-factor force=5970N helix-angle=19.52808deg pinion-overhang=35mm output-shaft-diameter=32mm tilt-stiffness=1e30N·m/rad face-width=24mm mounting-slope=0 mesh-stiffness=417N/µm",
        "1",
        "1.257",
    ),
    (
        "alignment-face-load-factor force=5970N helix-angle=19.52808deg pinion-overhang=35mm output-shaft-diameter=32mm tilt-stiffness=1e30N·m/rad face-width=24mm mounting-slope=0.3mm/m mesh-stiffness=417N/µm",
        "1",
        "1.466",
    ),
];
