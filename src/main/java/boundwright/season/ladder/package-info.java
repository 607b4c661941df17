/**
 * How long an athlete stays at an approach before the gate answers <em>add two steps</em>, learned from this squad's stays, and what
 * follows for the season: from how many steps they are expected to work on which day, on which days that is decided, and what happens
 * in both cases. Time is counted in sessions that were attended, because that is what teaches; the least stay is counted in days, as the
 * gate counts it. Planned is the expected day, never the earliest possible.
 */
@NullMarked
package boundwright.season.ladder;

import org.jspecify.annotations.NullMarked;
