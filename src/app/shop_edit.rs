//! The one way in which the window changes the user's workshop: a whole next one, refused where it has a new fault.

use crate::document::Fault;
use crate::workshop::{Workshop, faults_of};

/// A change of the workshop.
#[derive(Clone, Debug, PartialEq)]
pub struct ShopEdit(Box<Workshop>);

impl ShopEdit {
    /// The workshop with something changed in it.
    #[must_use]
    pub fn of(workshop: &Workshop, change: impl FnOnce(&mut Workshop)) -> Self {
        let mut next = workshop.clone();
        change(&mut next);
        Self(Box::new(next))
    }

    /// Another workshop altogether.
    #[must_use]
    pub fn to(workshop: Workshop) -> Self {
        Self(Box::new(workshop))
    }

    /// The workshop after the change, or the first fault that the change would bring into it.
    ///
    /// # Errors
    /// The fault, naming field, value and what is allowed.
    pub fn checked(&self, before: &Workshop) -> Result<&Workshop, Fault> {
        let known = faults_of(before);
        match faults_of(&self.0)
            .into_iter()
            .find(|fault| !known.contains(fault))
        {
            Some(fault) => Err(fault),
            None => Ok(&self.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bad_value_is_refused_by_name_and_a_good_one_taken() {
        let shop = Workshop::default_set().unwrap();
        let bad = ShopEdit::of(&shop, |shop| shop.lathe.leadscrew_pitch_mm = 0.0);
        let fault = bad.checked(&shop).unwrap_err();
        assert!(fault.to_string().contains("leadscrew pitch"), "{fault}");
        let good = ShopEdit::of(&shop, |shop| shop.lathe.leadscrew_pitch_mm = 4.0);
        assert!((good.checked(&shop).unwrap().lathe.leadscrew_pitch_mm - 4.0).abs() < 1e-12);
    }
}
