//! How fast the window is, told at its end to those who ask for it with `TRACEWHEEL_TIMES=1`.
#![allow(clippy::disallowed_methods, reason = "times are what this is for")]

use std::time::{Duration, Instant};

/// Times of frames.
pub(super) struct Times {
    start: Instant,
    on: bool,
    first: Option<Duration>,
    frames: u64,
    pulled: u64,
    /// Time in which something was pulled.
    pulling: Duration,
    last: Option<Instant>,
}

impl Times {
    /// Times since the program began.
    pub fn since(begun: Option<Instant>) -> Self {
        Self {
            start: begun.unwrap_or_else(Instant::now),
            on: Self::wanted(),
            first: None,
            frames: 0,
            pulled: 0,
            pulling: Duration::ZERO,
            last: None,
        }
    }

    /// Whether they are asked for at all.
    pub fn wanted() -> bool {
        std::env::var_os("TRACEWHEEL_TIMES").is_some()
    }

    /// Whether they are asked for: then frames follow each other without a pause while something is pulled.
    pub fn is_on(&self) -> bool {
        self.on
    }

    /// A frame was painted.
    pub fn frame(&mut self, pulling: bool) {
        let now = Instant::now();
        self.frames += 1;
        self.first.get_or_insert(now - self.start);
        match (pulling, self.last) {
            (true, Some(last)) => {
                self.pulled += 1;
                self.pulling += now - last;
                self.last = Some(now);
            }
            (true, None) => self.last = Some(now),
            (false, _) => self.last = None,
        }
    }
}

impl Drop for Times {
    fn drop(&mut self) {
        if self.on {
            let first = self.first.unwrap_or_default().as_secs_f64() * 1e3;
            let rate = if self.pulled > 0 { self.pulled as f64 / self.pulling.as_secs_f64() } else { 0.0 };
            let words = format!(
                "first frame after {first:.0} ms; {} frames; {} of them while pulling, {rate:.0} a second\n",
                self.frames, self.pulled
            );
            // Nobody is left to tell if this cannot be written.
            let _ = std::io::Write::write_all(&mut std::io::stderr(), words.as_bytes());
        }
    }
}
