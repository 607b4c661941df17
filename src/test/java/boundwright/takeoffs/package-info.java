/** Tests of repeated take-offs. */
@NullMarked
package boundwright.takeoffs;

import org.jspecify.annotations.NullMarked;
