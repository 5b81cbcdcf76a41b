package handreach.report.draw;

import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What the parts of a PDF are and how they read: the structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8). */
public final class PdfTags {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement whole = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
    private final Map<Integer, PDParentTreeValue> parents = new HashMap<>();
    private PDPage page;
    private COSArray ofPage;

    public PdfTags(PDDocument document) {
        root.appendKid(whole);
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(marked);
        PDViewerPreferences shown = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        shown.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(shown);
    }

    /** The parts that follow stand on this page. */
    public void turnTo(PDPage next) {
        page = next;
        ofPage = new COSArray();
        page.setStructParents(parents.size());
        page.getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
        parents.put(parents.size(), new PDParentTreeValue(ofPage));
    }

    /** A part begins; returns the number of its content on the page. */
    int part(Pen.Part part, String words) {
        PDStructureElement element = new PDStructureElement(type(part), whole);
        element.setPage(page);
        if (part == Pen.Part.FIGURE) element.setAlternateDescription(words);
        else element.setActualText(words);
        int number = ofPage.size();
        element.appendKid(number);
        whole.appendKid(element);
        ofPage.add(element.getCOSObject());
        return number;
    }

    static String type(Pen.Part part) {
        return switch (part) {
            case TITLE -> StandardStructureTypes.H1;
            case HEADING -> StandardStructureTypes.H2;
            case PARAGRAPH -> StandardStructureTypes.P;
            case FIGURE -> StandardStructureTypes.Figure;
        };
    }

    /** All pages are drawn. */
    public void end() {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
    }
}
