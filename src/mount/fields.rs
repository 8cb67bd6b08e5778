//! The one list of scalar interface values: key, name in the file, label, unit, how to measure.

/// Writes the key enum of an owner's scalar values and the access by key.
macro_rules! interface_fields {
    ($(#[$meta:meta])* $key:ident of $owner:ident { $($variant:ident = $field:ident, $unit:ident, $label:literal, $range:expr, $how:literal;)* }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $key { $(#[doc = $label] $variant,)* }

        impl $key {
            /// Every key, in the order of the file.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The name in the file.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => stringify!($field),)* }
            }

            /// The label on screen.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self { $(Self::$variant => $label,)* }
            }

            /// The unit of the stored value.
            #[must_use]
            pub const fn unit(self) -> $crate::mount::Unit {
                match self { $(Self::$variant => $crate::mount::Unit::$unit,)* }
            }

            /// Least and greatest value that is not absurd, in the unit of the value.
            #[must_use]
            pub const fn range(self) -> (f64, f64) {
                match self { $(Self::$variant => $range,)* }
            }

            /// How to measure it.
            #[must_use]
            pub const fn how(self) -> &'static str {
                match self { $(Self::$variant => $how,)* }
            }
        }

        impl $owner {
            /// The scalar value behind `key`.
            #[must_use]
            pub const fn field(&self, key: $key) -> &$crate::mount::Interface<f64> {
                match key { $($key::$variant => &self.$field,)* }
            }

            /// The scalar value behind `key`, to change.
            pub const fn field_mut(&mut self, key: $key) -> &mut $crate::mount::Interface<f64> {
                match key { $($key::$variant => &mut self.$field,)* }
            }
        }
    };
}
pub(crate) use interface_fields;

use serde::{Deserialize, Serialize};

/// Whether a part has a feature at all.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Presence {
    /// Nobody has looked.
    #[default]
    Unknown,
    /// The part does not have it.
    Absent,
    /// The part has it.
    Present,
}
