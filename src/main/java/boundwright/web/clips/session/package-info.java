/** Films of whole sessions: taken in, their reps named, nodded into the log. */
@NullMarked
package boundwright.web.clips.session;

import org.jspecify.annotations.NullMarked;
