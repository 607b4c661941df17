/** How hard athletes found their sessions, described and never judged. */
@NullMarked
package boundwright.load.rating;

import org.jspecify.annotations.NullMarked;

