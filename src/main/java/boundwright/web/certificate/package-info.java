/** The certificate that the machine makes for itself: a small authority that phones trust, and a leaf for serving. */
@NullMarked
package boundwright.web.certificate;

import org.jspecify.annotations.NullMarked;
