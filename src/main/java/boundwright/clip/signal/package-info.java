/** Smoothing that does not shift time: a zero-lag low-pass with its cut-off, and a Kalman smoother for gaps and irregular times. */
@NullMarked
package boundwright.clip.signal;

import org.jspecify.annotations.NullMarked;

