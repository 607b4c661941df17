package boundwright.store.movein;

import java.time.Instant;

/**
 * A file that was taken and of which something is still here.
 *
 * @param number by which it is taken back
 * @param kind what it was taken as
 * @param name what it was called
 * @param at when
 * @param here what of it is here: {@code 12 reps, 2 athletes}
 */
public record Past(long number, Kind kind, String name, Instant at, String here) {}
