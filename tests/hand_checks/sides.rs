//! Rows worked by hand: two drives on one axis, mounting, two pinions.

pub const ROWS: &[super::Row] = &[
    // (1200·0.5 + 400·0.82)/1600; 0.58 + 1200·0.04/1600
    (
        "near-share moved-mass=1200kg carried-mass=400kg mass-offset=0 drive-spacing=2.5m carriage-reach=0.32",
        "1",
        "0.5800",
    ),
    (
        "near-share moved-mass=1200kg carried-mass=400kg mass-offset=0.1m drive-spacing=2.5m carriage-reach=0.32",
        "1",
        "0.6100",
    ),
    ("near-share moved-mass=0 carried-mass=0 mass-offset=0.1m drive-spacing=2.5m carriage-reach=0.32", "1", "0.5"),
    ("far-mass moving-mass=1600kg driven-mass=928kg", "kg", "672.0"),
    (
        "side-force mass=928kg acceleration=2m/s² inclination=0 guide-friction=0 drive-wiper-force=0 counterbalance-share=0",
        "N",
        "1856.0",
    ),
    (
        "side-force mass=672kg acceleration=2m/s² inclination=0 guide-friction=0 drive-wiper-force=0 counterbalance-share=0",
        "N",
        "1344.0",
    ),
    // 100·(1 + 9.80665·0.5·0.6 + 0.01·9.80665·0.866025) + 20
    (
        "side-force mass=100kg acceleration=1m/s² inclination=30deg guide-friction=0.01 drive-wiper-force=20N counterbalance-share=0.4",
        "N",
        "422.69",
    ),
    // √2·36 + 57.5
    (
        "side-difference drive-error=36µm side-correction=0 expansion=11.5µm/(m·K) side-temperature-difference=1K travel=5m",
        "mm",
        "0.10841",
    ),
    // √2·36·0.4 + 57.5
    (
        "side-difference drive-error=36µm side-correction=60% expansion=11.5µm/(m·K) side-temperature-difference=1K travel=5m",
        "mm",
        "0.07786",
    ),
    // 60e-6/(2/54e6 + 6.25/2e8)
    (
        "racking-force side-difference=60µm drive-stiffness=54N/µm drive-spacing=2.5m yaw-stiffness=2e5kN·m/rad",
        "N",
        "878.6",
    ),
    // 879·2.5/2e8 rad in degrees
    ("yaw-angle racking-force=879N drive-spacing=2.5m yaw-stiffness=2e5kN·m/rad", "deg", "0.00062954"),
    // 0.001 deg · 1.25 m
    ("yaw-at-tool yaw-angle=0.001deg drive-spacing=2.5m", "mm", "0.021817"),
    ("force-sum motion-peak-force=1856N racking-force=879N", "N", "2735.0"),
    // 2π·10/0.133333 = 471.24; 9424.8·1600/(1600 + 444.13)
    (
        "lost-side-force set-torque=20N·m travel-per-turn=133.33333mm reduction=10 rotating-inertia=20kg·cm² moving-mass=1600kg",
        "N",
        "7377.0",
    ),
    ("lost-side-moment lost-side-force=3kN drive-spacing=2.5m", "N·m", "3750.0"),
    ("lost-side-lead lost-side-force=3kN drive-spacing=2.5m yaw-stiffness=2e5kN·m/rad", "mm", "0.046875"),
    ("lost-side-yaw lost-side-lead=46.875µm drive-spacing=2.5m", "deg", "0.0021486"),
    // 879·0.133333/(2π·10·0.95)
    (
        "racking-torque racking-force=879N travel-per-turn=133.33333mm reduction=10 total-efficiency=0.95",
        "N·m",
        "1.963",
    ),
    ("racked-torque phase-torque=-4N·m racking-torque=2N·m", "N·m", "6.0"),
    // 12.5 + 4/3 + 3.5·2
    ("racked-rms-torque torques=3N·m,4N·m shares=0.5,0.5 racking-torque=2N·m", "N·m", "4.5644"),
    ("racked-rms-torque torques=3N·m shares=0 racking-torque=3N·m", "N·m", "1.7321"),
    // mounting
    ("rack-joints segments=12", "1", "11.0"),
    ("rack-pins segments=12 pins-per-segment=2", "1", "24.0"),
    ("segment-fasteners segment-length=1m fastener-pitch=62.5mm", "1", "16.0"),
    // 16·0.15·32·(0.625 − 0.075) = 42.24; and 2·π/4·0.006²·200e6 = 11.310
    (
        "segment-holding-force segment-fasteners=16 fastener-preload=32kN friction=0.15 tightening-factor=1.6 embedding=0.075 pins-per-segment=0 pin-diameter=0 pin-strength=200MPa",
        "N",
        "42240.0",
    ),
    (
        "segment-holding-force segment-fasteners=16 fastener-preload=32kN friction=0.15 tightening-factor=1.6 embedding=0.075 pins-per-segment=2 pin-diameter=6mm pin-strength=200MPa",
        "N",
        "53550",
    ),
    (
        "segment-holding-force segment-fasteners=16 fastener-preload=32kN friction=0.15 tightening-factor=1.6 embedding=0.7 pins-per-segment=0 pin-diameter=0 pin-strength=0",
        "N",
        "0.0",
    ),
    ("seat-force force=6kN helix-angle=0", "N", "6000.0"),
    // 6000/cos 20°
    ("seat-force force=6kN helix-angle=20deg", "N", "6385.1"),
    ("thread-depth fastener-diameter=8mm thread-depth-factor=1.5", "mm", "12.0"),
    // 206e9·576e-6·12.3e-6·10
    (
        "restrained-force section-area=576mm² rack-expansion=11.5µm/(m·K) bed-expansion=23.8µm/(m·K) temperature-swing=10K",
        "N",
        "14595",
    ),
    // 0.04e-6·39/20·2e7/10
    (
        "grease-per-year grease-per-distance=0.04g/km face-width=39mm grease-width=20mm service-distance=20000km service-years=10years",
        "kg",
        "0.156",
    ),
    ("relubrication-hours relubrication-distance=100km mean-speed=6m/min", "s", "1000000"),
    ("grease-dose grease-per-diameter=0.05kg/m nominal-diameter=40mm", "kg", "0.0020"),
    ("lubrication-interval surroundings-share=0.5 relubrication-hours=277.8h", "s", "500040"),
    // 0.002·4000/138.9; 0.156/0.5
    ("nut-grease-need grease-dose=0.002kg hours-per-year=4000h lubrication-interval=138.9h", "kg", "0.057595"),
    ("rack-grease-need grease-per-year=0.156kg surroundings-share=0.5", "kg", "0.3120"),
    // two pinions: 2·0.2·300/0.063662
    ("bias-force bias-share=20% gearbox-acceleration-torque=300N·m pinion-diameter=63.662mm", "N", "1885.0"),
    ("drive-units drives=2 pinions=2", "1", "4.0"),
    ("rack-passes pinion-passes=1e7 pinions=2", "1", "20000000"),
    ("pinion-share side-share=0.58 pinions=2", "1", "0.29"),
    ("pinion-stiffness stiffness=1200N/µm pinions=2", "N/µm", "600.0"),
    // 100 + 1000·(10/60)·(1/0.95 − 1)
    (
        "racked-nut-heat motion-nut-heat=100W racking-force=2kN mean-speed=10m/min screw-efficiency=0.95",
        "kW",
        "0.108772",
    ),
    ("pinion-yaw-stiffness yaw-stiffness=2e5kN·m/rad pinions=2", "N·m/rad", "100000000"),
    ("both-pinions-stiffness total-stiffness=54N/µm pinions=2", "N/µm", "108.0"),
    ("play-free-force bias-force=1885N", "N", "3770.0"),
    ("play-free-demand drive-cutting-force=900N friction-force=60N pinions=2", "N", "1020.0"),
    ("racked-play-free-demand drive-cutting-force=900N friction-force=60N pinions=2 racking-force=500N", "N", "2020.0"),
    ("biased-play pinion-play=60µm play-free-demand=1020N play-free-force=3770N", "mm", "0.0"),
    ("biased-play pinion-play=60µm play-free-demand=4kN play-free-force=3770N", "mm", "0.060"),
    ("first-pinion-force phase-force=500N bias-force=1885N", "N", "2385.0"),
    ("second-pinion-force phase-force=500N bias-force=1885N", "N", "-1385.0"),
    ("larger-torque first-torque=3N·m second-torque=-5N·m", "N·m", "5.0"),
    ("pair-torque first-torque=5N·m second-torque=3N·m speed=1m/s efficiency=0.85", "N·m", "4.0"),
    // (5 − 0.85²·3)/2, and turned round the same against the motion
    ("pair-torque first-torque=5N·m second-torque=-3N·m speed=1m/s efficiency=0.85", "N·m", "1.41625"),
    ("pair-torque first-torque=-5N·m second-torque=3N·m speed=-1m/s efficiency=0.85", "N·m", "-1.41625"),
    // more is given back than is taken: (3/0.85² − 5)/2
    ("pair-torque first-torque=3N·m second-torque=-5N·m speed=1m/s efficiency=0.85", "N·m", "-0.4238754"),
    ("pair-torque first-torque=5N·m second-torque=-3N·m speed=0m/s efficiency=0.85", "N·m", "1.0"),
    // √((25 + 9)/2)
    ("worse-rms-torque first-torques=5N·m,3N·m second-torques=-1N·m,-3N·m shares=0.5,0.5", "N·m", "4.1231"),
    // √(9 + 3 + 3·3)
    ("worse-racked-rms-torque first-torques=3N·m second-torques=-3N·m shares=1 racking-torque=3N·m", "N·m", "4.5826"),
    // ∛((2385³ + 1385³)/2) = ∛(8.1115e9)
    ("biased-mean-force forces=500N,-500N shares=0.5,0.5 speeds=0.2m/s,-0.2m/s bias-force=1885N", "N", "2009.3"),
    ("both-pinions-force pinion-force=5kN pinions=2", "N", "10000.0"),
    ("pinion-force force=900N pinions=2", "N", "450.0"),
    ("pinion-load mass=1600kg pinions=2", "kg", "800.0"),
];
