//! The main sizes are a mapping in JSON: { "diameter": { "value", "unit" }, … }, kept in order.
use super::{Parameter, ParameterValue};
use serde::de::{MapAccess, Visitor};
use serde::ser::SerializeMap;
use serde::{Deserializer, Serializer};

pub fn serialize<S: Serializer>(parameters: &[Parameter], serializer: S) -> Result<S::Ok, S::Error> {
    let mut map = serializer.serialize_map(Some(parameters.len()))?;
    for parameter in parameters {
        map.serialize_entry(&parameter.name, &parameter.value)?;
    }
    map.end()
}

pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Vec<Parameter>, D::Error> {
    struct Sizes;
    impl<'de> Visitor<'de> for Sizes {
        type Value = Vec<Parameter>;
        fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            f.write_str("a mapping of main sizes")
        }
        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
            let mut parameters = Vec::new();
            while let Some((name, value)) = map.next_entry::<String, ParameterValue>()? {
                parameters.push(Parameter { name, value });
            }
            Ok(parameters)
        }
    }
    deserializer.deserialize_map(Sizes)
}
