/** The functions of the module that a browser loads: they hand over to {@code boundwright.phone} and think nothing themselves. */
@NullMarked
package boundwright.phone.js;

import org.jspecify.annotations.NullMarked;
