/** Citations and their standing: every number shown to a coach can say where it comes from and how far to trust it. */
@NullMarked
package boundwright.evidence;

import org.jspecify.annotations.NullMarked;

