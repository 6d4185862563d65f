// SPDX-License-Identifier: EPL-2.0
package org.dutywright.capture.formats.hdf5;

import io.jhdf.Constants;
import io.jhdf.FractalHeap;
import io.jhdf.GroupSymbolTableNode;
import io.jhdf.LocalHeap;
import io.jhdf.ObjectHeader;
import io.jhdf.SymbolTableEntry;
import io.jhdf.Utils;
import io.jhdf.btree.BTreeV1;
import io.jhdf.btree.BTreeV2;
import io.jhdf.btree.record.AttributeNameForIndexedAttributesRecord;
import io.jhdf.btree.record.LinkNameForIndexedGroupRecord;
import io.jhdf.object.message.AttributeInfoMessage;
import io.jhdf.object.message.AttributeMessage;
import io.jhdf.object.message.LinkInfoMessage;
import io.jhdf.object.message.LinkMessage;
import io.jhdf.object.message.SymbolTableMessage;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;

/** What the header of an object leads to: the links of a group, the attributes of anything. */
final class HdfLinks {
    private static final int SOFT_LINK = 2;
    private static final int MOST_DIGITS = 12;
    private static final Pattern NUMBER = Pattern.compile("[0-9]+");

    private HdfLinks() {}

    /**
     * A link of a group.
     *
     * @param name of what it leads to
     * @param hard whether it leads to an object of this file by its place
     * @param address the place, for a hard link
     */
    record Link(String name, boolean hard, long address) {}

    /** The links of a group, in whichever of the three ways they are kept. */
    static List<Link> of(HdfStorage storage, ObjectHeader header) {
        if (header.hasMessageOfType(SymbolTableMessage.class)) {
            return ofSymbolTable(storage, header.getMessageOfType(SymbolTableMessage.class));
        }
        List<LinkMessage> messages = new ArrayList<>(header.getMessagesOfType(LinkMessage.class));
        boolean ordered = true;
        if (header.hasMessageOfType(LinkInfoMessage.class)) {
            LinkInfoMessage info = header.getMessageOfType(LinkInfoMessage.class);
            if (info.getBTreeNameIndexAddress() != Constants.UNDEFINED_ADDRESS) {
                FractalHeap heap = new FractalHeap(storage, info.getFractalHeapAddress());
                new BTreeV2<LinkNameForIndexedGroupRecord>(storage, info.getBTreeNameIndexAddress())
                        .getRecords()
                        .forEach(record -> messages.add(
                                LinkMessage.fromBuffer(heap.getId(record.getId()), storage.getSuperblock())));
                ordered = false;
            }
            if (info.isLinkCreationOrderTracked()) {
                messages.sort(Comparator.comparingLong(LinkMessage::getCreationOrder));
                ordered = true;
            }
        }
        List<Link> links =
                new ArrayList<>(messages.stream().map(HdfLinks::ofMessage).toList());
        return ordered ? links : byName(links);
    }

    /** Links whose order says nothing, with numbers in names in the order of their values: ch2 before ch10. */
    private static List<Link> byName(List<Link> links) {
        links.sort(Comparator.comparing(link -> NUMBER.matcher(link.name())
                .replaceAll(digits ->
                        "0".repeat(Math.max(0, MOST_DIGITS - digits.group().length())) + digits.group())));
        return links;
    }

    private static Link ofMessage(LinkMessage message) {
        boolean hard = message.getLinkType() == LinkMessage.LinkType.HARD;
        return new Link(message.getLinkName(), hard, hard ? message.getHardLinkAddress() : 0);
    }

    private static List<Link> ofSymbolTable(HdfStorage storage, SymbolTableMessage table) {
        ByteBuffer names = new LocalHeap(storage, table.getLocalHeapAddress()).getDataBuffer();
        List<Link> links = new ArrayList<>();
        for (long address :
                BTreeV1.createGroupBTree(storage, table.getBTreeAddress()).getChildAddresses()) {
            for (SymbolTableEntry entry : new GroupSymbolTableNode(storage, address).getSymbolTableEntries()) {
                names.position(entry.getLinkNameOffset());
                String name = Utils.readUntilNull(names);
                links.add(new Link(name, entry.getCacheType() != SOFT_LINK, entry.getObjectHeaderAddress()));
            }
        }
        return byName(links);
    }

    /** The attributes of an object. */
    static List<AttributeMessage> attributes(HdfStorage storage, ObjectHeader header) {
        List<AttributeMessage> attributes = new ArrayList<>(header.getMessagesOfType(AttributeMessage.class));
        if (header.hasMessageOfType(AttributeInfoMessage.class)) {
            AttributeInfoMessage info = header.getMessageOfType(AttributeInfoMessage.class);
            if (info.getFractalHeapAddress() != Constants.UNDEFINED_ADDRESS) {
                FractalHeap heap = new FractalHeap(storage, info.getFractalHeapAddress());
                new BTreeV2<AttributeNameForIndexedAttributesRecord>(storage, info.getAttributeNameBTreeAddress())
                        .getRecords()
                        .forEach(record -> attributes.add(
                                new AttributeMessage(heap.getId(record.getHeapId()), storage, record.getFlags())));
            }
        }
        return attributes;
    }
}
