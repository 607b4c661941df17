/** Names and taps proposed for the reps of a session's film. */
@NullMarked
package boundwright.clip.day;

import org.jspecify.annotations.NullMarked;
