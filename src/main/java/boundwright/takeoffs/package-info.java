/**
 * Take-offs repeated down the runway with running steps between them: where each falls, where the rep ends and how sure that is, learned
 * from this athlete's own reps of the kind. Kept apart from what is learned of bounds ({@code flight}), which it asks only for a first guess.
 */
@NullMarked
package boundwright.takeoffs;

import org.jspecify.annotations.NullMarked;
