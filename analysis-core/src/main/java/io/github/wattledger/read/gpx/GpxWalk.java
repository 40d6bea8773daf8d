package io.github.wattledger.read.gpx;

import io.github.wattledger.cancel.Cancellation;
import io.github.wattledger.cancel.CancelledException;
import io.github.wattledger.read.ReadNote;
import io.github.wattledger.read.UnreadableRideException;
import io.github.wattledger.read.UnreadableRideException.Reason;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * One walk through a GPX document. Namespaces are left alone: many files use a prefix that they never declare, and an
 * element's local name says what it holds. Document types are refused, and with them all entities that a file defines.
 *
 * @param encodingNote what was read in another encoding than the document declares, or null
 * @param damagedAt the line at which the document ends early or is damaged, or null where it is whole
 */
record GpxWalk(@Nullable ReadNote encodingNote, @Nullable String damagedAt) {
    /** Longer text of an element is cut. */
    static final int LONGEST_TEXT = 200;

    /** What hears of the elements of a document, in their order. */
    interface Elements {
        /**
         * An element begins.
         *
         * @param name its name without a prefix
         * @param reader stands at it: its whole name and its attributes
         */
        void start(String name, XMLStreamReader reader) throws UnreadableRideException;

        /**
         * An element ends.
         *
         * @param name its name without a prefix
         * @param text the text in it, empty where elements stand in it
         */
        void end(String name, String text) throws UnreadableRideException;
    }

    /**
     * Walks through all that comes before the end or the damage.
     *
     * @throws UnreadableRideException when the document declares a document type, or the elements are refused
     * @throws CancelledException when it ends early
     */
    static GpxWalk through(byte[] content, Cancellation cancellation, Elements elements)
            throws UnreadableRideException {
        ReadNote encodingNote = null;
        XMLStreamReader reader = null;
        try {
            GpxText document = GpxText.of(content);
            encodingNote = document.note();
            reader = factory().createXMLStreamReader(document.reader());
            StringBuilder text = new StringBuilder();
            while (reader.hasNext()) {
                cancellation.check();
                accept(reader, reader.next(), text, elements);
            }
            return new GpxWalk(encodingNote, null);
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 1 : e.getLocation().getLineNumber();
            return new GpxWalk(encodingNote, "line " + Math.max(1, line));
        } catch (CancelledException e) {
            throw e;
        } catch (RuntimeException e) {
            // The JDK's parser stumbles over some broken documents, for instance for want of the text of its message.
            int line = reader == null ? 1 : reader.getLocation().getLineNumber();
            return new GpxWalk(encodingNote, "line " + Math.max(1, line));
        }
    }

    /** A parser without document types, entities and namespaces. */
    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, false);
        return factory;
    }

    private static void accept(XMLStreamReader reader, int event, StringBuilder text, Elements elements)
            throws UnreadableRideException {
        switch (event) {
            case XMLStreamConstants.START_ELEMENT -> {
                text.setLength(0);
                elements.start(localName(reader), reader);
            }
            case XMLStreamConstants.END_ELEMENT -> {
                elements.end(localName(reader), text.toString());
                text.setLength(0);
            }
            case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
                if (text.length() < LONGEST_TEXT) {
                    String more = reader.getText();
                    text.append(more, 0, Math.min(more.length(), LONGEST_TEXT - text.length()));
                }
            }
            case XMLStreamConstants.DTD ->
                throw new UnreadableRideException(
                        Reason.NOT_A_RECORDING,
                        "declares a document type (line " + reader.getLocation().getLineNumber()
                                + "), which no GPX file needs and which can be used for attacks; remove that declaration");
            default -> {}
        }
    }

    /** Without namespaces, the parser gives the prefix as a part of the name. */
    private static String localName(XMLStreamReader reader) {
        String name = reader.getLocalName();
        return name.substring(name.indexOf(':') + 1);
    }
}
