/**
 * A meet as it goes: rules, attempts, ranks, wind and points, and what the next attempt of an athlete is for. It asks {@code approach}
 * where to aim and knows no clock.
 */
@NullMarked
package boundwright.meet;

import org.jspecify.annotations.NullMarked;

