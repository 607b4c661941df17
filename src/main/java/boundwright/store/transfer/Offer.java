package boundwright.store.transfer;

import java.time.Instant;

/**
 * A club is ready to give an athlete to another, which has not answered yet.
 *
 * @param id number
 * @param token random; under it the taking is done once, also if it is cut off in the middle
 * @param fromClub where the athlete is
 * @param athleteId their number in that club's store
 * @param toClub who may take them
 * @param made when
 */
public record Offer(long id, String token, long fromClub, long athleteId, long toClub, Instant made) {}
