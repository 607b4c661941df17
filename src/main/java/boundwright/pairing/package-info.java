/** Which phones the coach lets in, and what each may do. */
@NullMarked
package boundwright.pairing;

import org.jspecify.annotations.NullMarked;
