package boundwright.account;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A line of what was done. Lines are added and never changed; an athlete stands in one by their random name, which says nothing once they
 * are erased.
 *
 * @param at when
 * @param clubId in which club
 * @param accountId whose account; null for the machine itself, a phone without an account, or nobody
 * @param who as what they came, in words: a login, a phone, this machine
 * @param what what was done, in words
 * @param about of whom or what; empty for nothing in particular
 */
public record Noted(Instant at, long clubId, @Nullable Long accountId, String who, String what, String about) {}
