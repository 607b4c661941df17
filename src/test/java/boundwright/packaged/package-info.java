/** The program as one folder with its own Java, tried from outside. */
@NullMarked
package boundwright.packaged;

import org.jspecify.annotations.NullMarked;
