/**
 * The long jump's take-off and flight: its parts, an athlete's own trade of speed for angle, what the foot's place at touchdown does,
 * and where the metres are. It says when the data cannot tell.
 */
@NullMarked
package boundwright.jump.takeoff;

import org.jspecify.annotations.NullMarked;
