//! Rows where no factor is one and no share the whole; the arithmetic stands above each value, in SI units.

pub const ROWS: &[super::Row] = &[
    // 200·(2+0.4·3)+220·(0.04/0.032)^0.8
    (
        "support-price bearing-price=200 thrust-ends=2 support-ends=3 support-price-share=0.4 ends-price=220 nominal-diameter=40mm",
        "",
        "903.00",
    ),
    // 1.5·1.2·(220·1.3+260·2)·(0.04/0.032)^1.5
    (
        "screw-price nominal-diameter=40mm length=2m length-limit=5m grade-factor=1.5 size-factor=1.2 nut-factor=1.3 base=220 per-metre=260",
        "",
        "2027.6",
    ),
    // 424·12·1.25
    ("rack-line-price rack-metre-price=424 rack-length=12m rack-price-factor=1.25", "", "6360.0"),
    // 0.008·(2·π·3/0.04)^2
    ("reduced-mass rotating-inertia=80kg·cm² travel-per-turn=40mm reduction=3", "kg", "1776.5"),
    // (0.8·12·2·π·3/0.04−1000)/(100+200)
    (
        "brake-deceleration brake-torque=12N·m brake-share=0.8 travel-per-turn=40mm reduction=3 gravity-force=1kN driven-mass=100kg reduced-mass=200kg",
        "m/s²",
        "11.746",
    ),
    // (300+3158)·(0.3+0.85·0.05)^2/2+2942·(0.3+0.85·0.05)^2/(2·0.5)
    (
        "brake-work speed=0.3m/s brake-delay=50ms fall-acceleration=0.85m/s² brake-deceleration=0.5m/s² driven-mass=300kg reduced-mass=3158kg gravity-force=2942N",
        "J",
        "547.94",
    ),
    // 0.3·0.05+0.85·0.05^2/2+(0.3+0.85·0.05)^2/(2·0.5)
    (
        "stopping-distance speed=0.3m/s brake-delay=50ms fall-acceleration=0.85m/s² brake-deceleration=0.5m/s²",
        "mm",
        "133.37",
    ),
    // 0.85·0.05^2/2+(0.85·0.05)^2/(2·0.5)
    ("drop-from-rest brake-delay=50ms fall-acceleration=0.85m/s² brake-deceleration=0.5m/s²", "mm", "2.8688"),
    // 2·0.85·(10·0.5·0.1+3·0.2·0.3)·2·π·3/0.04
    (
        "regenerated-power torques=-10N·m,4N·m,-3N·m speeds=0.5m/s,0.5m/s,0.2m/s shares=10%,60%,30% travel-per-turn=40mm reduction=3 drives=2 efficiency=0.85",
        "kW",
        "0.54475",
    ),
    // 2·0.8·(0.9·(300·0.5^2/2+((1−0.25)·1000−40)·0.04)+0.006·(2·π·3·0.5/0.04)^2/2−0.5·2·π·0.04/0.04)
    (
        "stop-energy accelerated-mass=300kg speed=0.5m/s rotating-inertia=60kg·cm² travel-per-turn=40mm reduction=3 gravity-force=1kN counterbalance-share=0.25 friction-force=40N drag-torque=0.5N·m back-efficiency=0.9 efficiency=0.8 slowing-distance=40mm drives=2",
        "J",
        "356.35",
    ),
    // 3000·0.04/(2·π·4·0.95)+0.5/4+0.01·2·2·π·4/0.04
    (
        "phase-torque force=3kN speed=0.5m/s acceleration=2m/s² travel-per-turn=40mm reduction=4 efficiency=0.95 back-efficiency=0.94 drag-torque=0.5N·m rotating-inertia=0.01kg·m²",
        "N·m",
        "17.717",
    ),
    // −3000·0.04·0.94/(2·π·4)+0.5/4+0.01·2·2·π·4/0.04
    (
        "phase-torque force=-3kN speed=0.5m/s acceleration=2m/s² travel-per-turn=40mm reduction=4 efficiency=0.95 back-efficiency=0.94 drag-torque=0.5N·m rotating-inertia=0.01kg·m²",
        "N·m",
        "8.2032",
    ),
    // 3000·0.04/(2·π·4)+0.01·2·2·π·4/0.04
    (
        "phase-torque force=3kN speed=0 acceleration=2m/s² travel-per-turn=40mm reduction=4 efficiency=0.95 back-efficiency=0.94 drag-torque=0.5N·m rotating-inertia=0.01kg·m²",
        "N·m",
        "17.341",
    ),
    // 2·π·3/0.04·√((0.3^2·0.3+0.4^2·0.5)/0.8)
    ("rms-speed speeds=0.3m/s,-0.4m/s shares=30%,50% travel-per-turn=40mm reduction=3", "1/min", "1645.7"),
    // 2000·0.04/(2·π·3)
    ("holding-torque gravity-force=-2kN travel-per-turn=40mm reduction=3", "N·m", "4.2441"),
    // 2·π·3·√(0.0088648/600)
    ("optimum-lead rotating-inertia=88.648kg·cm² driven-mass=600kg reduction=3", "mm", "72.454"),
    // √(15000·(1/0.006+1/0.004))/(2·π·3)
    (
        "coupling-resonance reduction-stiffness=15kN·m/rad rotor-inertia=60kg·cm² load-inertia=40kg·cm² reduction=3",
        "Hz",
        "132.63",
    ),
    // 12·2·π·3/0.04
    ("drive-push set-torque=12N·m travel-per-turn=40mm reduction=3", "N", "5654.9"),
    // √((0.2·(2000·0.04/(2·π)+0.025·2·2·π/0.04)^2+0.3·(−1000·0.04/(2·π)+0.025·3·2·π/0.04)^2)/0.5)
    (
        "load-rms-torque forces=2kN,-1kN accelerations=2m/s²,3m/s² shares=20%,30% travel-per-turn=40mm shaft-inertia=250kg·cm²",
        "N·m",
        "13.679",
    ),
    // 2·π/0.04·√((0.2·2^2+0.3·3^2)/0.5)
    ("load-rms-acceleration accelerations=2m/s²,3m/s² shares=20%,30% travel-per-turn=40mm", "rad/s²", "415.59"),
    // (0.8+0.4/2)·2·π·0.2/0.02+(0.25·2000·0.3+0.5·1000·0.1)·(1/0.9−1)
    (
        "nut-heat preload-drag-torque=0.8N·m bearing-drag-torque=0.4N·m mean-speed=12m/min travel-per-turn=20mm phase-force=2kN,-1kN phase-share=25%,50% phase-speed=0.3m/s,0.1m/s screw-efficiency=0.9",
        "kW",
        "0.085054",
    ),
    // 2·0.01·0.5·2·π·3/0.04·0.4/0.85
    (
        "mean-power torques=0.01N·m,-0.01N·m speeds=0.5m/s,0.5m/s shares=40%,60% travel-per-turn=40mm reduction=3 drives=2 efficiency=0.85",
        "kW",
        "0.0022176",
    ),
    // 2·10·0.5·2·π·3/0.04
    (
        "peak-power torques=10N·m,-4N·m,-12N·m top-speeds=0.5m/s,0.5m/s,0.2m/s travel-per-turn=40mm reduction=3 drives=2",
        "kW",
        "4.7124",
    ),
    // 15/(60·(4500−0.7/0.04·3·60)/2000)
    (
        "peak-torque-use torques=15N·m,-15N·m top-speeds=0.5m/s,-0.7m/s travel-per-turn=40mm reduction=3 peak-torque=60N·m knee-speed=2500/min speed-limit=4500/min",
        "1",
        "0.37037",
    ),
    (
        "available-peak-torque speed=3000/min peak-torque=60N·m knee-speed=3000/min speed-limit=3000/min",
        "N·m",
        "60.000",
    ),
    ("weakened-peak-torque speed=3000/min peak-torque=60N·m knee-speed=3000/min speed-limit=3000/min", "N·m", "60.000"),
    ("slip-reserve slip-force=2kN end-fastener-force=1kN sharing-fasteners=3", "N", "0.0"),
    ("thermal-compression warm-axial-force=3kN", "N", "0.0"),
    // 0.5+(0.6·0.1/2.5+0.4·0.3)/(0.6+0.4)
    (
        "near-share moved-mass=0.6kg carried-mass=0.4kg mass-offset=0.1m drive-spacing=2.5m carriage-reach=0.3",
        "1",
        "0.64400",
    ),
    // (0.6/2+0.4·(1/2+0.4))/(0.6+0.4)
    ("load-share moved-mass=0.6kg carried-mass=0.4kg drives=2 carriage-reach=0.4", "1", "0.66000"),
    ("shock-factor moves-per-hour=1000", "1", "1.0000"),
    ("shock-factor moves-per-hour=1001", "1", "1.2000"),
    ("shock-factor moves-per-hour=2000", "1", "1.2000"),
    ("shock-factor moves-per-hour=2001", "1", "1.4000"),
    ("shock-factor moves-per-hour=3000", "1", "1.4000"),
    // −(100·(−9)+1000·(1−0.3)−50−400)
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=2m/s²,-9m/s² gravity-force=1kN phase-balance=0.2,0.3 friction-force=50N phase-direction=1,-1 phase-cutting-force=0,-400N both-ways=0 inclination=90deg",
        "N",
        "650.00",
    ),
    // −(100·(−9)+1000·(1−0.3)−50−0.5·400)
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=-9m/s²,0 gravity-force=1kN phase-balance=0.3,0 friction-force=50N phase-direction=-1,0 phase-cutting-force=400N,0 both-ways=0.5 inclination=90deg",
        "N",
        "450.00",
    ),
    // 900+50+400
    (
        "pressing-force accelerated-mass=100kg phase-acceleration=2m/s²,-9m/s² gravity-force=0 phase-balance=0,0 friction-force=50N phase-direction=1,-1 phase-cutting-force=0,-400N both-ways=0 inclination=0",
        "N",
        "1350.0",
    ),
    // ISO 6336-1 on a rack: q' = 0.04723 + 0.15551/20 − 0.00635·0.5 − 0.11654·0.5/20 + 0.00529·0.25; ε_α from circles
    // and lines
    ("mesh-stiffness module=2mm teeth=20 helix=straight face-width=24mm profile-shift=0.5", "N/µm", "472.71"),
    // 1e9·0.04/0.133333
    ("life-hours life=1000Mrev mean-speed=8m/min travel-per-turn=40mm", "s", "300000000.0"),
    // 1.5·300·g·0.5·0.04/(2·π·3)
    ("brake-holding-torque mass=300kg angle=30deg travel-per-turn=40mm ratio=3 safety=1.5", "N·m", "4.6823"),
    // 8e+08·(0.015/0.05)^(1/3)
    ("nut-stiffness rated-nut-stiffness=800N/µm preload-share=0.015", "N/µm", "535.55"),
    // tan(atan(0.01/(π·0.033)))/tan(atan(0.01/(π·0.033))+π/4)
    ("screw-efficiency lead=10mm ball-circle-diameter=33mm friction=1", "1", "0.079486"),
    // tan(atan(0.1/(π·0.02))−π/4)/tan(atan(0.1/(π·0.02)))
    ("back-driving-efficiency lead=100mm ball-circle-diameter=20mm friction=1", "1", "0.14342"),
    ("back-driving-efficiency lead=2mm ball-circle-diameter=33mm friction=0.05", "1", "0.0"),
    // (3·90+220)·(0.05/0.032)^0.8
    ("clamps-price thrust-ends=3 clamp-price=90 ends-price=220 nominal-diameter=50mm", "", "700.25"),
    // 2·π·2·√(0.0088648/600)
    ("optimum-lead rotating-inertia=88.648kg·cm² driven-mass=600kg reduction=2", "mm", "48.302"),
    // (0.3·3000·0.6+0.5·2000·0.4)·(1/0.95−1)+1.3·2·π·0.5/0.12
    (
        "gearbox-heat phase-force=3kN,-2kN phase-share=30%,50% phase-speed=0.6m/s,0.4m/s reduction-efficiency=0.95 drag-torque=1.3N·m mean-speed=0.5m/s travel-per-turn=120mm",
        "kW",
        "0.083508",
    ),
    // max(0.3·3500·0.6+0.5·1500·0.4,0.3·2500·0.6+0.5·2500·0.4)·(1/0.95−1)+1.3·2·π·0.5/0.12
    (
        "steady-gearbox-heat phase-force=3kN,-2kN phase-share=30%,50% phase-speed=0.6m/s,0.4m/s reduction-efficiency=0.95 drag-torque=1.3N·m mean-speed=0.5m/s travel-per-turn=120mm steady-force=0.5kN",
        "kW",
        "0.084034",
    ),
    // max(0.3·2500·0.6+0.5·2500·0.4,0.3·1500·0.6+0.5·3500·0.4)·(1/0.95−1)+1.3·2·π·0.5/0.12
    (
        "steady-gearbox-heat phase-force=2kN,-3kN phase-share=30%,50% phase-speed=0.6m/s,0.4m/s reduction-efficiency=0.95 drag-torque=1.3N·m mean-speed=0.5m/s travel-per-turn=120mm steady-force=0.5kN",
        "kW",
        "0.085087",
    ),
    (
        "stop-energy accelerated-mass=1kg speed=0.5m/s rotating-inertia=0.1kg·cm² travel-per-turn=40mm reduction=3 gravity-force=0 counterbalance-share=0 friction-force=40N drag-torque=0.5N·m back-efficiency=0.9 efficiency=0.8 slowing-distance=40mm drives=2",
        "J",
        "0.0",
    ),
    ("shock-factor moves-per-hour=3001", "1", "1.8000"),
    ("shock-factor moves-per-hour=6000", "1", "1.8000"),
    ("shock-factor moves-per-hour=6001", "1", "2.0000"),
    // 3·(500+4·60+8·100)
    ("exchange-price count=3 part-price=500 work=4h labour-rate=60 standstill=8h downtime-price=100", "", "4620.0"),
    // 1000+6.7101·(50+70)+300
    ("whole-life-cost purchase=1000 energy=50 upkeep=70 annuity=6.7101 replacement=300", "", "2105.2"),
    // (1−1.03^−7)/0.03
    ("annuity rate=3% years=7years", "1", "6.2303"),
    // 7000/0.8
    ("supply-power peak-power=7kW supply-efficiency=0.8", "kW", "8.7500"),
    // 30·(π−2·asin((0.096−0.048)/(2·0.2)))/(2·π)
    ("teeth-in-mesh driving-teeth=30 driving-pulley=48mm driven-pulley=96mm centre-distance=200mm", "1", "13.851"),
    // 30·(π−2·asin((0.096−0.048)/(2·0.2)))/(2·π)
    ("teeth-in-mesh driving-teeth=60 driving-pulley=96mm driven-pulley=48mm centre-distance=200mm", "1", "13.851"),
    // 7000+√(7000^2+5e+07·800·0.5^2)
    ("crash-force speed=30m/min total-stiffness=50N/µm reduced-mass=800kg drive-push=7kN", "N", "107244.7"),
    // √((4·20000/(π·(0.036^2−0.012^2)))^2+3·(16·30·0.036/(π·(0.036^4−0.012^4)))^2)
    ("combined-stress axial-force=20kN torque=30N·m diameter=36mm bore=12mm", "MPa", "22.839"),
    // √((1−e^(−90/1800))/(1−e^(−0.4·90/1800)))
    ("intermittent-factor cycle-time=90s load-share=0.4 frame-time=1800s", "1", "1.5694"),
    // 3/(2·π·22)^2·abs(sin(π·22·3/40)/(π·22·3/40))
    ("jerk-residue acceleration=3m/s² jerk=40m/s³ first-mode=22Hz", "mm", "0.026988"),
    // 1.2·5·√(2000/3000)
    (
        "gearbox-drag-at-speed no-load-torque=1.2N·m reduction=5 input-speed=2000/min gearbox-nominal-speed=3000/min",
        "N·m",
        "4.8990",
    ),
    // √(20^2−(20^2−15^2)·(2000/3000)^2)
    (
        "unweakened-continuous-torque speed=2000/min standstill-torque=20N·m rated-torque=15N·m rated-speed=3000/min",
        "N·m",
        "17.951",
    ),
    // (1−0.01·800/100)·√((140−45)/(140−40))
    ("site-factor altitude=1800m ambient-temperature=45°C winding-temperature=140°C", "1", "0.89671"),
    // √((140−45)/(140−40))
    ("site-factor altitude=800m ambient-temperature=45°C winding-temperature=140°C", "1", "0.97468"),
    // 1−0.01·800/100
    ("site-factor altitude=1800m ambient-temperature=20°C winding-temperature=140°C", "1", "0.92000"),
    // (1/7e+08+(1.5+1.2)/(2·206e9·π/4·(0.0365^2−0.012^2)))/(2/7e+08+1.5/(206e9·π/4·(0.0365^2−0.012^2)))
    (
        "end-share core-diameter=36.5mm bore=12mm free-length=1.5m travel=1.2m end-stiffness=700N/µm thrust-ends=2",
        "1",
        "0.79279",
    ),
    // 1.05^−2.25+1.05^−4.5+1.05^−6.75+1.05^−9
    ("discounted-exchanges life=9000h hours-per-year=4000h service-years=10years rate=5%", "1", "3.0629"),
    // 0.5+(1200·0.1/2+400·0.3)/(1200+400)
    (
        "near-share moved-mass=1200kg carried-mass=400kg mass-offset=-0.1m drive-spacing=2m carriage-reach=0.3",
        "1",
        "0.61250",
    ),
    ("standing-force stretch-force=1kN thermal-compression=4kN", "N", "4000.0"),
    // 0.5·0.1+0.5^2/(2·0.8)
    ("emergency-stop-distance speed=30m/min stop-reaction=0.1s stop-deceleration=0.8m/s²", "mm", "206.25"),
    // 2·0.85·0.01·0.5·0.6·2·π·3/0.04
    (
        "regenerated-power torques=2N·m,-0.01N·m speeds=0.5m/s,0.5m/s shares=40%,60% travel-per-turn=40mm reduction=3 drives=2 efficiency=0.85",
        "kW",
        "0.0024033",
    ),
    ("peak-force forces=3N,-4N,1N gravity-force=2N", "N", "4.0000"),
    ("peak-torque torques=0.3N·m,-0.4N·m", "N·m", "0.40000"),
    // (0.1·1+0.03·0.4)/0.13
    ("mean-stroke phase-share=50%,30% phase-speed=0.2m/s,-0.1m/s phase-stroke=1m,0.4m usual-stroke=2m", "mm", "861.54"),
    // 3600·(0.5·0.2/1.5+0.3·0.1/0.4)
    ("moves-per-hour phase-share=50%,30% phase-speed=0.2m/s,-0.1m/s phase-stroke=1.5m,0.4m", "1", "510.00"),
];
