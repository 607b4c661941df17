package boundwright.pairing;

import java.time.Instant;

/**
 * A phone that the coach has paired.
 *
 * @param id number in the store
 * @param name what its owner called it, 1 to 60 characters
 * @param rights what it may do at most
 * @param owner for whom it was paired; it may do no more than they
 * @param sealed whether it was paired over https; only such a one is let in over https, because what was sent over plain http
 *     may have been read by others on the Wi-Fi
 * @param since when it was paired
 * @param lastSeen when it last asked for something, to {@link Pairing#SEEN_STEP}
 */
public record Phone(long id, String name, PhoneRights rights, Owner owner, boolean sealed, Instant since, Instant lastSeen) {}
