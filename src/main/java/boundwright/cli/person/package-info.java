/** Who an athlete is and what was agreed to, from the command line. */
@NullMarked
package boundwright.cli.person;

import org.jspecify.annotations.NullMarked;
