package boundwright.clip.day;

import java.time.Instant;

/**
 * A rep that was tapped at the track.
 *
 * @param repId its number in the log
 * @param athleteId whose
 * @param at when it was tapped
 */
public record TappedRep(long repId, long athleteId, Instant at) {}
