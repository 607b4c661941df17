/** Tests of the program that came as one folder. */
@NullMarked
package boundwright.cli.installed;

import org.jspecify.annotations.NullMarked;
