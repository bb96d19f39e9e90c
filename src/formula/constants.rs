//! Exact constants and the standard values of steel that equations use.

/// Standard gravity, m/s² (exact; CGPM 1901).
pub const GRAVITY: f64 = 9.806_65;
/// Young's modulus of steel, Pa (usual value for drive elements, common practice).
pub const STEEL_YOUNG: f64 = 2.06e11;
/// Poisson's ratio of steel.
pub const STEEL_POISSON: f64 = 0.3;
/// Shear modulus of steel, Pa: E/(2(1 + ν)).
pub const STEEL_SHEAR: f64 = STEEL_YOUNG / (2.0 * (1.0 + STEEL_POISSON));
/// Density of steel, kg/m³ (usual value, common practice).
pub const STEEL_DENSITY: f64 = 7850.0;
