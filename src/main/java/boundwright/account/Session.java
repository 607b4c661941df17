package boundwright.account;

import java.time.Instant;

/**
 * Somebody logged in with one browser.
 *
 * @param id number in the store
 * @param account who
 * @param clubId the club that they are looking at
 * @param sealed whether it began where nobody could read along; only such a one is let in there
 * @param browser what the browser calls itself, at most 120 characters
 * @param since when they logged in
 * @param lastSeen when they last asked for something, to {@link Accounts#SEEN_STEP}
 */
public record Session(long id, Account account, long clubId, boolean sealed, String browser, Instant since, Instant lastSeen) {}
