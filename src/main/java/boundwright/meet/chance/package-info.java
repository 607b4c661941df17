/** The chance to reach a standard by a day: the athlete's level as a random walk, attempts as the aim sees them, wind and its rule, meet by meet. */
@NullMarked
package boundwright.meet.chance;

import org.jspecify.annotations.NullMarked;
