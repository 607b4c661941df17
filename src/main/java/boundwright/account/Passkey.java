package boundwright.account;

import java.time.Instant;

/**
 * A passkey: a key pair that somebody's device made for this server; the device keeps the other half.
 *
 * @param credential its number as the device gave it, Base64 for addresses
 * @param accountId whose
 * @param key the public half with its number (attested credential data of W3C Web Authentication, 6.5.1), Base64
 * @param counter how often it was used, as the device counts; 0 where it does not
 * @param name what its owner called it, at most 60 characters
 * @param since when it was made
 */
public record Passkey(String credential, long accountId, String key, long counter, String name, Instant since) {}
