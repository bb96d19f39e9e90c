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
];
