//! Rows worked by hand: screws, nuts and their bearings.

pub const ROWS: &[super::Row] = &[
    // lengths, masses, prices
    // 0.1 m/s over 10 mm
    ("turn-frequency speed=6m/min lead=10mm", "Hz", "10.0"),
    // 60 Hz · 10 mm = 0.6 m/s
    ("turn-marking-speed first-mode=60Hz lead=10mm", "m/min", "36.0"),
    ("free-length travel=1m overtravel=30mm end-gap=20mm nut-length=100mm support-room=0", "mm", "1200.0"),
    ("free-length travel=6m overtravel=50mm end-gap=40mm nut-length=136mm support-room=126mm", "mm", "6442.0"),
    ("support-room support-room-share=2 nominal-diameter=63mm", "mm", "126.0"),
    ("support-mass support-size-mass=1.4kg nominal-diameter=63mm", "kg", "2.7563"),
    ("screw-slenderness free-length=1.6m nominal-diameter=40mm", "1", "40.0"),
    // 650·(63/32)^0.8
    ("support-pair-price support-pair-size-price=650 nominal-diameter=63mm", "", "1117.55"),
    ("screw-mass nominal-diameter=40mm bore=0 length=1.3m", "kg", "12.824"),
    // 7850·π/4·(0.0064 − 0.001024)·3
    ("screw-mass nominal-diameter=80mm bore=32mm length=3m", "kg", "99.435"),
    ("screw-inertia nominal-diameter=40mm bore=0 length=1.3m", "kg·m²", "0.0025648"),
    // 7850·3·π/32·(0.08⁴ − 0.032⁴)
    ("screw-inertia nominal-diameter=80mm bore=32mm length=3m", "kg·m²", "0.092276"),
    (
        "screw-price nominal-diameter=32mm length=1m length-limit=5m grade-factor=1 size-factor=1.2 nut-factor=1 base=220 per-metre=260",
        "",
        "576.0",
    ),
    ("same-force value=3kN", "N", "3000.0"),
    // ends: 115e3·1.5/14 325.6, half of it over two spans
    ("end-fixity tilt-stiffness=115kN·m/rad root-diameter=34.5mm bore=0 free-length=1.5m spans=1", "1", "12.0414"),
    ("end-fixity tilt-stiffness=115kN·m/rad root-diameter=34.5mm bore=0 free-length=1.5m spans=2", "1", "6.0207"),
    // least roots found by halving: B = 4.155 662, 3.867 160; u = 4.132 318, 4.678 269
    ("held-eigenvalue-squared first-fixity=10 second-fixity=10 spans=1", "1", "17.26955"),
    ("held-eigenvalue-squared first-fixity=3 second-fixity=7 spans=1", "1", "14.95523"),
    ("held-eigenvalue-squared first-fixity=0 second-fixity=0 spans=2", "1", "39.47842"),
    ("held-buckling-factor first-fixity=10 second-fixity=0 spans=1", "1", "1.730190"),
    ("held-buckling-factor first-fixity=3 second-fixity=7 spans=1", "1", "2.217536"),
    ("held-buckling-factor first-fixity=0 second-fixity=0 spans=3", "1", "9.00000"),
    ("rooted-eigenvalue-squared fixity=10", "1", "2.967838"),
    ("rooted-buckling-factor fixity=10", "1", "0.2068644"),
    ("rooted-buckling-factor fixity=1e9", "1", "0.250000"),
    // 2.0457·π²·14 325.6/2.25; π²·206e9·π/64·(0.04⁴ − 0.016⁴)/4
    ("euler-load root-diameter=34.5mm bore=0 free-length=1.5m buckling-factor=2.0457", "N", "128550"),
    ("euler-load root-diameter=40mm bore=16mm free-length=2m buckling-factor=1", "N", "62237.8"),
    ("clamp-tilt-stiffness root-diameter=34.5mm bore=0", "N·m/rad", "415235"),
    // sag: 5/384, and with both ends nearly rigid 1/384, of w·L⁴/(E·I); half of it under the Euler load
    (
        "screw-sag root-diameter=34.5mm bore=0 free-length=4m first-fixity=0 second-fixity=0 spans=1 axial-tension=0 euler-load=10kN inclination=0",
        "mm",
        "16.7449",
    ),
    (
        "screw-sag root-diameter=34.5mm bore=0 free-length=4m first-fixity=1e9 second-fixity=1e9 spans=1 axial-tension=10kN euler-load=10kN inclination=0",
        "mm",
        "1.67449",
    ),
    // 0.005 416 119 of w·3.2⁴/(E·I), bored 25 mm; at 60 degrees half of the weight lies across
    (
        "screw-sag root-diameter=55.1mm bore=25mm free-length=6.4m first-fixity=1e9 second-fixity=0 spans=2 axial-tension=0 euler-load=10kN inclination=60deg",
        "mm",
        "0.46377",
    ),
    // (1/8 + 1/20)·w·L⁴/(E·I)
    ("rooted-sag root-diameter=34.5mm bore=0 free-length=1m fixity=10 inclination=0", "mm", "0.879109"),
    ("screw-weight-on-nut root-diameter=63mm bore=0 free-length=6m spans=1 inclination=0", "N", "899.9"),
    ("screw-weight-on-nut root-diameter=55.1mm bore=25mm free-length=6.4m spans=2 inclination=0", "N", "291.547"),
    ("loaded-whip-speed bare-whip-speed=2891/min whip-factor=0.95", "1/min", "2746.45"),
    // column
    // a tool that pushes up by 3 kN against a weight of 1 kN presses by 2 kN, one way or either
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=0 gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=0 phase-cutting-force=-3kN both-ways=0 inclination=90deg",
        "N",
        "2000.0",
    ),
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=0 gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=0 phase-cutting-force=3kN both-ways=0 inclination=90deg",
        "N",
        "0.0",
    ),
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=0 gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=0 phase-cutting-force=3kN both-ways=1 inclination=90deg",
        "N",
        "2000.0",
    ),
    // 100·(−20) + 1000 = −1000
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=-20m/s² gravity-force=1kN phase-balance=0 friction-force=0 phase-direction=0 phase-cutting-force=0 both-ways=0 inclination=90deg",
        "N",
        "1000.0",
    ),
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=0 gravity-force=0 phase-balance=0 friction-force=0 phase-direction=0 phase-cutting-force=4kN both-ways=0 inclination=0",
        "N",
        "4000.0",
    ),
    ("pressed-length free-length=1.2m end-gap=40mm nut-length=100mm", "mm", "1110.0"),
    ("held-pressed-length free-length=1.2m", "mm", "800.0"),
    ("column-use pressing-force=8kN column-load=32kN", "1", "0.25000"),
    // 10/3 kN over 2.0457·π²·E·I/(8/3 m)²; with 5 kN of heat the end alone: 5 kN over 2.0457·π²·E·I/(4 m)²
    (
        "held-column-use peak-force=10kN thermal-compression=0 root-diameter=34.5mm bore=0 free-length=4m buckling-factor=2.0457 yield-strength=350MPa",
        "1",
        "0.0819523",
    ),
    (
        "held-column-use peak-force=10kN thermal-compression=5kN root-diameter=34.5mm bore=0 free-length=4m buckling-factor=2.0457 yield-strength=350MPa",
        "1",
        "0.276589",
    ),
    // short: 10 kN over 350 MPa·934.82 mm²
    (
        "held-column-use peak-force=10kN thermal-compression=0 root-diameter=34.5mm bore=0 free-length=0.3m buckling-factor=2.0457 yield-strength=350MPa",
        "1",
        "0.0305636",
    ),
    // σ 31.83, τ 12.73 MPa; σ 9.474, τ 8.167 MPa
    ("combined-stress axial-force=10kN torque=20N·m diameter=20mm bore=0", "MPa", "38.7241"),
    ("combined-stress axial-force=10kN torque=100N·m diameter=40mm bore=16mm", "MPa", "17.0246"),
    // stretch: 41.4 µm over 1.2 m/215.55 MN + 2/700 N/µm
    (
        "held-force core-diameter=36.5mm bore=0 free-length=1.2m end-stiffness=700N/µm expansion=11.5µm/(m·K) temperature=3K thrust-ends=2",
        "N",
        "4914.32",
    ),
    (
        "held-force core-diameter=36.5mm bore=0 free-length=1.2m end-stiffness=700N/µm expansion=11.5µm/(m·K) temperature=3K thrust-ends=1",
        "N",
        "0.0",
    ),
    // 5/11.5·10, and aluminium 12.3/11.5·10
    ("bed-shift screw-expansion=11.5µm/(m·K) bed-expansion=6.5µm/(m·K) temperature-swing=10K", "K", "4.3478"),
    ("bed-shift screw-expansion=11.5µm/(m·K) bed-expansion=23.8µm/(m·K) temperature-swing=10K", "K", "10.6957"),
    ("bed-shift screw-expansion=11.5µm/(m·K) bed-expansion=11.5µm/(m·K) temperature-swing=10K", "K", "0.0"),
    ("cold-stretch stretch=3K bed-shift=4.35K", "K", "7.3500"),
    ("stretch-left stretch=3K length-warming=4.2K bed-shift=0", "K", "-1.2000"),
    ("stretch-left stretch=3K length-warming=4.2K bed-shift=4.35K", "K", "-5.5500"),
    ("thermal-compression warm-axial-force=-3kN", "N", "3000.0"),
    ("thermal-compression warm-axial-force=3kN", "N", "0.0"),
    ("standing-force stretch-force=4kN thermal-compression=1kN", "N", "4000.0"),
    ("standing-force stretch-force=0 thermal-compression=1kN", "N", "1000.0"),
    ("rise-left screw-warming=6K length-warming=4K stretch=3K", "K", "3.0000"),
    ("rise-left screw-warming=6K length-warming=2K stretch=3K", "K", "4.0000"),
    ("lead-compensation expansion=11.5µm/(m·K) stretch=3K travel=1m", "mm", "-0.034500"),
    ("end-force standing-force=4kN force=-10kN end-share=0.7", "N", "11000.0"),
    (
        "end-share core-diameter=36.5mm bore=0 free-length=1.5m travel=1.2m end-stiffness=700N/µm thrust-ends=2",
        "1",
        "0.783574",
    ),
    (
        "end-share core-diameter=36.5mm bore=0 free-length=1.5m travel=1.2m end-stiffness=700N/µm thrust-ends=1",
        "1",
        "1.00000",
    ),
    // ∛((0.64 + 0.04)/4); ∛(1/4)
    ("mean-end-share end-share=0.8 thrust-ends=2", "1", "0.553966"),
    ("mean-end-share end-share=1 thrust-ends=2", "1", "0.629961"),
    ("mean-end-share end-share=1 thrust-ends=1", "1", "1.00000"),
    // ratings and lives
    ("hardness-factor surface-hardness=600", "1", "0.841680"),
    ("hardness-factor surface-hardness=700", "1", "1.00000"),
    ("static-hardness-factor surface-hardness=600", "1", "0.772183"),
    (
        "effective-dynamic-rating size-rating=49.3kN rating-factor=0.9 hardness-factor=1 melt-factor=1.25 temperature-factor=0.95",
        "N",
        "52689.4",
    ),
    ("effective-static-rating size-rating=137kN rating-factor=0.9 static-hardness-factor=0.7722", "N", "95212.3"),
    ("nut-reliability-factor reliability=97%", "1", "0.44000"),
    ("nut-reliability-factor reliability=92.5%", "1", "0.81000"),
    ("bearing-reliability-factor reliability=97%", "1", "0.47000"),
    (
        "pair-life dynamic-rating=36kN preload=3kN forces=4kN shares=1 speeds=0.1m/s reliability-factor=1",
        "Mrev",
        "301.1",
    ),
    (
        "pair-life dynamic-rating=36kN preload=3kN forces=4kN shares=1 speeds=0.1m/s reliability-factor=0.5",
        "Mrev",
        "150.6",
    ),
    // (40 kN/5.92195 kN)³ = 308.167 Mrev, × 10 mm ÷ 10 m/min = 308 167 min
    // no preload: (36/4)³ on one half alone
    (
        "racked-pair-life dynamic-rating=36kN preload=0 forces=3kN shares=1 speeds=0.1m/s reliability-factor=1 racking-force=1kN",
        "Mrev",
        "729.000",
    ),
    // pressed both ways by 1 kN: 36³ Mrev of each half, together 2^(−9/10) of that
    (
        "racked-pair-life dynamic-rating=36kN preload=0 forces=0 shares=1 speeds=0.1m/s reliability-factor=1 racking-force=1kN",
        "Mrev",
        "25002.33",
    ),
    // loaded row 5.92195 kN, relieved row 0.92195 kN: 308.167 and 81 669 Mrev, together
    // (308.167^(−10/9) + 81 669^(−10/9))^(−9/10) = 307.605
    (
        "bearing-set-life rating=40kN lesser-rating=40kN preload=2.9kN standing-force=0 end-share=1 forces=5kN shares=1 speeds=10m/min reliability-factor=1",
        "Mrev",
        "307.605",
    ),
    // to and fro with 5 kN, half of the way each: each row has the cubic mean of 5.92195 and 0.92195 kN, 4.7061 kN
    (
        "bearing-set-life rating=40kN lesser-rating=40kN preload=2.9kN standing-force=0 end-share=1 forces=5kN,-5kN shares=0.5,0.5 speeds=10m/min,10m/min reliability-factor=1",
        "Mrev",
        "329.043",
    ),
    // the lone row of a triple bears less: each row half of the way, (F/C) of 4.7061/40 and 4.7061/24.54
    (
        "bearing-set-life rating=40kN lesser-rating=24.54kN preload=2.9kN standing-force=0 end-share=1 forces=5kN,-5kN shares=0.5,0.5 speeds=10m/min,10m/min reliability-factor=1",
        "Mrev",
        "120.670",
    ),
    // one way only: the side with more rows bears it
    (
        "bearing-set-life rating=40kN lesser-rating=24.54kN preload=2.9kN standing-force=0 end-share=1 forces=-5kN shares=1 speeds=10m/min reliability-factor=1",
        "Mrev",
        "305.325",
    ),
    // the worse end: 3 + 0.6·5 = 6 kN on a preload of 2.9: F_A = 6.607 36 kN, F_B = 0.607 36 kN; 221.870 and 285 658 Mrev, together
    // 221.799, times 0.47
    (
        "bearing-set-life rating=40kN lesser-rating=40kN preload=2.9kN standing-force=3kN end-share=0.6 forces=5kN shares=1 speeds=10m/min reliability-factor=0.47",
        "Mrev",
        "104.245",
    ),
    // pressed both ways by 1 kN: 40³ Mrev of each row, together 2^(−9/10) of that
    (
        "racked-bearing-set-life rating=40kN lesser-rating=40kN preload=0 standing-force=0 end-share=1 forces=0 shares=1 speeds=10m/min reliability-factor=1 racking-force=1kN",
        "Mrev",
        "34296.75",
    ),
    // stiffness: 1/(1/700 + 1/199.34)
    (
        "screw-end-stiffness core-diameter=34.5mm bore=0 free-length=1m thrust-ends=1 bearing-stiffness=700N/µm",
        "N/µm",
        "151.03",
    ),
    (
        "screw-end-stiffness core-diameter=34.5mm bore=0 free-length=1m thrust-ends=2 bearing-stiffness=700N/µm",
        "N/µm",
        "496.9",
    ),
    (
        "screw-end-stiffness core-diameter=36.5mm bore=10mm free-length=1m thrust-ends=1 bearing-stiffness=700N/µm",
        "N/µm",
        "155.173",
    ),
    (
        "bored-torsional-stiffness-linear root-diameter=34.5mm bore=0 free-length=1.1m lead=10mm held-ends=1",
        "N/µm",
        "3954.9",
    ),
    (
        "bored-torsional-stiffness-linear root-diameter=34.5mm bore=0 free-length=1.1m lead=10mm held-ends=2",
        "N/µm",
        "15819.7",
    ),
    (
        "stiffness-of-six first=120N/µm second=120N/µm third=120N/µm fourth=120N/µm fifth=120N/µm sixth=120N/µm",
        "N/µm",
        "20.0",
    ),
    // heat: Re 10 122, Nu 55.44; √(45·0.04/80); 125.66/(45·π·0.032) = 27.777 K a metre
    ("heat-transfer nominal-diameter=32mm screw-mean-speed=1500/min", "W/(m²·K)", "45.57"),
    ("heat-transfer nominal-diameter=32mm screw-mean-speed=0", "W/(m²·K)", "10.0"),
    ("fin-length nominal-diameter=40mm bore=0 heat-transfer=20W/(m²·K)", "mm", "150.00"),
    ("fin-length nominal-diameter=80mm bore=32mm heat-transfer=10W/(m²·K)", "mm", "274.955"),
    ("length-warming heat=125.66W nominal-diameter=32mm free-length=1m heat-transfer=45W/(m²·K)", "K", "27.7770"),
    (
        "screw-warming heat=125.66W nominal-diameter=32mm stroke=0.6m heat-transfer=45W/(m²·K) fin-length=89.44mm length-warming=27.777K",
        "K",
        "39.402",
    ),
    // a short stroke: half of P/(h·π·d·l_f)
    (
        "screw-warming heat=125.66W nominal-diameter=32mm stroke=0 heat-transfer=45W/(m²·K) fin-length=89.44mm length-warming=27.777K",
        "K",
        "155.28",
    ),
    (
        "screw-warming heat=125.66W nominal-diameter=32mm stroke=0.6m heat-transfer=45W/(m²·K) fin-length=89.44mm length-warming=40K",
        "K",
        "40.000",
    ),
    ("warming-time nominal-diameter=32mm bore=0 heat-transfer=44.9W/(m²·K)", "s", "643.385"),
    ("warming-time nominal-diameter=80mm bore=32mm heat-transfer=10W/(m²·K)", "s", "6066.48"),
];
