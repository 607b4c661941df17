/**
 * The calendar of a season, for an athlete or the squad: which events there are, by which name they are known for good, how often each has
 * changed and which went away, drawn from all plans that were published; and the addresses by which it is read. An event says what is done
 * and where, never why something is not done: a day that is held simply has no session.
 */
@NullMarked
package boundwright.season.calendar;

import org.jspecify.annotations.NullMarked;
