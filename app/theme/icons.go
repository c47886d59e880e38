package theme

import (
	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/assets"
)

// IconName names one of our icons.
type IconName string

// The icons. Each means one thing everywhere.
const (
	IconDue       IconName = "due"        // room: what is to be done
	IconPots      IconName = "pots"       // room: the bench of pots
	IconYear      IconName = "year"       // room: the four turns
	IconFeeding   IconName = "feeding"    // room: rounds of feed
	IconMix       IconName = "mix"        // room: mix and buying
	IconPlantBook IconName = "plant_book" // room: the catalogue
	IconSite      IconName = "site"       // room: place and climate

	IconUndo      IconName = "undo"
	IconRedo      IconName = "redo"
	IconAdd       IconName = "add"
	IconRemove    IconName = "remove"
	IconDuplicate IconName = "duplicate"
	IconEdit      IconName = "edit"
	IconSearch    IconName = "search"
	IconTick      IconName = "tick"
	IconSnooze    IconName = "snooze"
	IconPin       IconName = "pin"
	IconRefuse    IconName = "refuse"
	IconSwap      IconName = "swap"
	IconWorking   IconName = "working" // how a figure was worked out
	IconPrint     IconName = "print"
	IconCalendar  IconName = "calendar"
	IconSave      IconName = "save"
	IconOpen      IconName = "open"
	IconBack      IconName = "back"
	IconForward   IconName = "forward"
	IconDown      IconName = "down"
	IconUp        IconName = "up"
	IconClose     IconName = "close"
	IconMore      IconName = "more"
	IconSettings  IconName = "settings"
	IconHelp      IconName = "help"

	IconNote    IconName = "note"
	IconCaution IconName = "caution" // somebody can be hurt
	IconWarning IconName = "warning"
	IconError   IconName = "error"
	IconPet     IconName = "pet"   // listed as harmful to pets
	IconFrost   IconName = "frost" // a freeze is likely
	IconSun     IconName = "sun"
	IconDrop    IconName = "drop" // water, liquid feed
)

// IconNames lists every icon, in the order above.
var IconNames = []IconName{
	IconDue, IconPots, IconYear, IconFeeding, IconMix, IconPlantBook, IconSite,
	IconUndo, IconRedo, IconAdd, IconRemove, IconDuplicate, IconEdit, IconSearch,
	IconTick, IconSnooze, IconPin, IconRefuse, IconSwap, IconWorking, IconPrint,
	IconCalendar, IconSave, IconOpen, IconBack, IconForward, IconDown, IconUp,
	IconClose, IconMore, IconSettings, IconHelp,
	IconNote, IconCaution, IconWarning, IconError, IconPet, IconFrost, IconSun, IconDrop,
}

// standardIcons maps the toolkit's names to ours.
var standardIcons = map[fyne.ThemeIconName]IconName{
	fynetheme.IconNameCancel:         IconClose,
	fynetheme.IconNameWindowClose:    IconClose,
	fynetheme.IconNameConfirm:        IconTick,
	fynetheme.IconNameSearch:         IconSearch,
	fynetheme.IconNameContentAdd:     IconAdd,
	fynetheme.IconNameContentRemove:  IconRemove,
	fynetheme.IconNameDelete:         IconRemove,
	fynetheme.IconNameContentCopy:    IconDuplicate,
	fynetheme.IconNameContentUndo:    IconUndo,
	fynetheme.IconNameContentRedo:    IconRedo,
	fynetheme.IconNameDocumentCreate: IconEdit,
	fynetheme.IconNameDocumentPrint:  IconPrint,
	fynetheme.IconNameDocumentSave:   IconSave,
	fynetheme.IconNameFolderOpen:     IconOpen,
	fynetheme.IconNameNavigateBack:   IconBack,
	fynetheme.IconNameNavigateNext:   IconForward,
	fynetheme.IconNameMenuExpand:     IconForward,
	fynetheme.IconNameArrowDropDown:  IconDown,
	fynetheme.IconNameArrowDropUp:    IconUp,
	fynetheme.IconNameMoveDown:       IconDown,
	fynetheme.IconNameMoveUp:         IconUp,
	fynetheme.IconNameMoreHorizontal: IconMore,
	fynetheme.IconNameSettings:       IconSettings,
	fynetheme.IconNameHelp:           IconHelp,
	fynetheme.IconNameQuestion:       IconHelp,
	fynetheme.IconNameInfo:           IconNote,
	fynetheme.IconNameWarning:        IconWarning,
	fynetheme.IconNameError:          IconError,
	fynetheme.IconNameCalendar:       IconCalendar,
}

// Icon returns the icon in the colour of text.
func Icon(name IconName) fyne.Resource { return iconResources[name] }

// IconIn returns the icon in a named colour of the theme.
func IconIn(name IconName, colour fyne.ThemeColorName) fyne.Resource {
	return fynetheme.NewColoredResource(iconResources[name], colour)
}

// AppIcon returns the program's own icon.
func AppIcon() fyne.Resource { return appIcon }

var appIcon = fyne.NewStaticResource("fourturn.png", assets.AppIcon)

var iconResources = loadIcons()

func loadIcons() map[IconName]fyne.Resource {
	icons := make(map[IconName]fyne.Resource, len(IconNames))
	for _, name := range IconNames {
		file := string(name) + ".svg"
		content, err := assets.Icons.ReadFile("icons/" + file)
		if err != nil {
			panic("theme: icon is missing: " + file)
		}
		icons[name] = fynetheme.NewThemedResource(fyne.NewStaticResource("fourturn-"+file, content))
	}
	return icons
}
