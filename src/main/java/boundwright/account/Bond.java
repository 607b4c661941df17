package boundwright.account;

import java.time.Instant;

/**
 * An account that comes in by a department's login.
 *
 * @param identity who the department says that comes
 * @param accountId whose account it is here
 * @param since when they were connected
 */
public record Bond(Identity identity, long accountId, Instant since) {}
