/** One athlete at the runway: marks, logging with a thumb, undo; and what is known of them. */
@NullMarked
package boundwright.web.athlete;

import org.jspecify.annotations.NullMarked;

