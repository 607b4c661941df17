/**
 * From a file to pictures with their own times. Native video code lives here and nowhere else, and runs in a child
 * process, so that a damaged file can end the child but never the program.
 */
@NullMarked
package boundwright.clip.film;

import org.jspecify.annotations.NullMarked;

