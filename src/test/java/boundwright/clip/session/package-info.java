/** Films of whole sessions, painted with their truth, and what is cut from them. */
@NullMarked
package boundwright.clip.session;

import org.jspecify.annotations.NullMarked;
