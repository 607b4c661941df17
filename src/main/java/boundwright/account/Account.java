package boundwright.account;

import java.time.Instant;

/**
 * Somebody who can log in.
 *
 * @param id number in the store
 * @param login what they log in with, 3 to 60 characters, small letters
 * @param name what others call them, 1 to 60 characters
 * @param active whether they may log in
 * @param hasPassword whether they have set one; without, they come in by a link
 * @param since when the account was made
 */
public record Account(long id, String login, String name, boolean active, boolean hasPassword, Instant since) {}
