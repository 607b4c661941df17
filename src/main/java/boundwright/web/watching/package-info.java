/** Watching an athlete: technique, care, load, who may add speed, tests, the second observer. */
@NullMarked
package boundwright.web.watching;

import org.jspecify.annotations.NullMarked;

