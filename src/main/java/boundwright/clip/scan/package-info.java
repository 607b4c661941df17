/**
 * The one long job of the room: reads a film once, follows the athlete through it and gives the raw body points. It runs
 * in a child process, so that neither a damaged film nor native code can take the program down.
 */
@NullMarked
package boundwright.clip.scan;

import org.jspecify.annotations.NullMarked;

