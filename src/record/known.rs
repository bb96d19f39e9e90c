//! A number that may not be known: NaN here, null in JSON.

use serde::{Deserialize, Deserializer, Serializer};

pub fn serialize<S: Serializer>(value: &f64, serializer: S) -> Result<S::Ok, S::Error> {
    if value.is_finite() { serializer.serialize_f64(*value) } else { serializer.serialize_none() }
}

pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<f64, D::Error> {
    Ok(Option::<f64>::deserialize(deserializer)?.unwrap_or(f64::NAN))
}

/// The value of a number that is not there.
pub fn unknown() -> f64 {
    f64::NAN
}
