/** When each rep of a session starts and on which lane: chains of work and rest, bounds, rules, and a search that can prove the finish. */
@NullMarked
package boundwright.season.order.timing;

import org.jspecify.annotations.NullMarked;
