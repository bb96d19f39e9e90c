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
    // (1500·0.92)²·40·24/(1.23639·6.22288·36028.7·0.743725·1.3), stresses in MPa: Z_B², Z_H², Z_E², Z_ε²
    (
        "pinion-flank-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm contact-limit=1500MPa face-load-factor=1.3",
        "N",
        "6820.96",
    ),
    (
        "rack-flank-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm contact-limit=1196MPa face-load-factor=1.3",
        "N",
        "5361.85",
    ),
    // 2·461·1.00374·0.7·48/(1.4104·1.8893)/1.3^0.8212, 1.4104 and 1.8893 printed for 20 straight teeth
    (
        "pinion-root-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm bending-limit=461MPa face-load-factor=1.3 reversal-factor=0.7",
        "N",
        "9304",
    ),
    (
        "rack-root-endurance module=2mm teeth=20 helix=0 profile-shift=0 face-width=24mm bending-limit=369MPa face-load-factor=1.3 reversal-factor=0.7",
        "N",
        "7246.4",
    ),
    // only 12 kN counts on its flank: 0.2·1.2^6.6112 = 0.66757; 10 kN·0.66757^(1/16.3006)
    (
        "pinion-flank-equivalent-force phase-force=12kN,-9kN phase-share=20%,80% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9755.2",
    ),
    // 0.2·1.2^8.7378 + 0.8·0.9^49.9125 = 0.98794; 10 kN·0.98794^(1/49.9125)
    (
        "pinion-root-equivalent-force phase-force=12kN,-9kN phase-share=20%,80% phase-speed=1m/s,1m/s endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9997.6",
    ),
    // moves of 1 m in 2.5 s and of 2 m in 4.5 s, half the time each: passes 0.2 and 0.1111 of 0.3111 a second
    (
        "rack-flank-equivalent-force phase-force=1kN,9kN,-1kN,1kN,11kN,-1kN phase-share=0.1,0.3,0.1,0.05555555555556,0.38888888888889,0.05555555555556 phase-speed=0.25m/s,0.5m/s,0.25m/s,0.25m/s,0.5m/s,0.25m/s phase-acceleration=1m/s²,0,-1m/s²,1m/s²,0,-1m/s² phase-stroke=1m,1m,1m,2m,2m,2m acceleration=1m/s² endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9853.4",
    ),
    (
        "rack-root-equivalent-force phase-force=1kN,9kN,-1kN,1kN,11kN,-1kN phase-share=0.1,0.3,0.1,0.05555555555556,0.38888888888889,0.05555555555556 phase-speed=0.25m/s,0.5m/s,0.25m/s,0.25m/s,0.5m/s,0.25m/s phase-acceleration=1m/s²,0,-1m/s²,1m/s²,0,-1m/s² phase-stroke=1m,1m,1m,2m,2m,2m acceleration=1m/s² endurance=10kN tooth-load-slope=1 tooth-load-offset=0 light-load-factor=1 face-width=24mm",
        "N",
        "9961.5",
    ),
];
