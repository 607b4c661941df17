/** Tests of the certificate. */
@NullMarked
package boundwright.web.certificate;

import org.jspecify.annotations.NullMarked;
