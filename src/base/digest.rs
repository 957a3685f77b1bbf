//! Digests by which two contents are seen to be the same. No safety is meant: whoever wants to make two contents alike can.

/// A digest of these parts, for numbers that must follow from the content (FNV-1a, 128 bits, each part with its length before it).
pub fn digest(parts: &[&[u8]]) -> u128 {
    const START: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    let mut hash = START;
    for part in parts {
        for byte in (part.len() as u64).to_be_bytes().iter().chain(*part) {
            hash = (hash ^ u128::from(*byte)).wrapping_mul(PRIME);
        }
    }
    hash
}
