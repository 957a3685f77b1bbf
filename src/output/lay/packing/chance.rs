//! Chance that is the same each time: xoshiro256++ (Blackman and Vigna, "Scrambled linear pseudorandom number generators", 2021), its
//! state filled by splitmix64 as they advise.

/// A run of numbers that hangs on its seed only.
#[derive(Clone, Debug)]
pub(super) struct Chance {
    state: [u64; 4],
}

impl Chance {
    /// From a seed.
    pub(super) fn new(seed: u64) -> Self {
        let mut s = seed;
        let state = std::array::from_fn(|_| {
            s = s.wrapping_add(0x9E37_79B9_7F4A_7C15);
            let z = (s ^ (s >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
            let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
            z ^ (z >> 31)
        });
        Self { state }
    }

    /// The next number.
    pub(super) fn next(&mut self) -> u64 {
        let [a, b, c, d] = self.state;
        let result = a.wrapping_add(d).rotate_left(23).wrapping_add(a);
        let (c, d) = (c ^ a, d ^ b);
        self.state = [a ^ d, b ^ c, c ^ (b << 17), d.rotate_left(45)];
        result
    }

    /// From 0 (with it) to 1 (without).
    pub(super) fn unit(&mut self) -> f32 {
        (self.next() >> 40) as f32 / (1u32 << 24) as f32
    }

    /// Between two numbers; the first if they are in the wrong order.
    pub(super) fn between(&mut self, low: f32, high: f32) -> f32 {
        if high > low { (low + (high - low) * self.unit()).min(high) } else { low }
    }

    /// A whole number below `n`; 0 if there is none.
    pub(super) fn below(&mut self, n: usize) -> usize {
        ((u128::from(self.next()) * n as u128) >> 64) as usize
    }

    /// About the normal distribution with middle 0 and deviation 1: the sum of twelve even numbers, less 6.
    pub(super) fn normal(&mut self) -> f32 {
        (0..12).map(|_| self.unit()).sum::<f32>() - 6.0
    }

    /// A chance order.
    pub(super) fn shuffle<T>(&mut self, items: &mut [T]) {
        for i in (1..items.len()).rev() {
            items.swap(i, self.below(i + 1));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Chance;

    /// The first numbers of the authors' own program (xoshiro256plusplus.c) for the state 1, 2, 3, 4; worked out by hand from its formula
    /// for the first two: rotl(1 + 4, 23) + 1 and, with the state 7, 0, 262146, 211106232532992, rotl(7 + 211106232532992, 23) + 7.
    #[test]
    fn it_is_the_published_one() {
        let mut chance = Chance { state: [1, 2, 3, 4] };
        assert_eq!([chance.next(), chance.next()], [41_943_041, 58_720_359]);
    }

    #[test]
    fn it_stays_in_its_range() {
        let mut chance = Chance::new(7);
        let mut seen = [0; 5];
        for _ in 0..1000 {
            seen[chance.below(5)] += 1;
            let x = chance.between(2.0, 3.0);
            assert!((2.0..=3.0).contains(&x));
        }
        assert!(seen.iter().all(|n| (150..250).contains(n)), "{seen:?}");
        assert_eq!(chance.below(0), 0);
    }
}
