/** Tests of the day as a phone carries it, on the Java machine and in the module that browsers load. */
@NullMarked
package boundwright.phone;

import org.jspecify.annotations.NullMarked;
