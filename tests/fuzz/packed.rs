//! Fuzzing: see `bodies`.
#![no_main]

mod bodies;

libfuzzer_sys::fuzz_target!(|data: &[u8]| bodies::packed(data));
