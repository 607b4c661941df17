/**
 * A film of a whole session cut into reps: where somebody runs through, bounds and lands. It tells a runner from a walker, not one
 * athlete from another; it reads no contacts.
 */
@NullMarked
package boundwright.clip.session;

import org.jspecify.annotations.NullMarked;
