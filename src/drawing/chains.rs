//! Chains of lengths along the axis: which length would close one.

/// Stations nearer than this are one, mm.
const SAME: f64 = 1e-6;

/// Stations along the axis, grouped by the lengths that join them.
#[derive(Debug, Default)]
pub struct Chains {
    groups: Vec<Vec<f64>>,
}

impl Chains {
    /// Joins two stations; false where they are joined already, so that a length between them closes a chain.
    pub fn join(&mut self, one: f64, other: f64) -> bool {
        let first = self.take(one);
        if first.iter().any(|known| (known - other).abs() < SAME) {
            self.groups.push(first);
            return false;
        }
        let second = self.take(other);
        self.groups.push([first, second].concat());
        true
    }

    /// Takes out the group of a station.
    fn take(&mut self, station: f64) -> Vec<f64> {
        let place = self
            .groups
            .iter()
            .position(|group| group.iter().any(|known| (known - station).abs() < SAME));
        place.map_or_else(|| vec![station], |place| self.groups.swap_remove(place))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_length_that_leads_where_others_lead_closes_the_chain() {
        let mut chains = Chains::default();
        assert!(chains.join(0.0, 2.0) && chains.join(5.0, 7.0) && chains.join(2.0, 5.0));
        assert!(!chains.join(7.0, 0.0));
        assert!(chains.join(7.0, 9.0));
    }
}
