/** Tests of what the program's numbers stand on. */
@NullMarked
package boundwright.evidence;

import org.jspecify.annotations.NullMarked;

