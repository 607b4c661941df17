/** The path of a leg on its way back as a picture. */
@NullMarked
package boundwright.picture.back;

import org.jspecify.annotations.NullMarked;
